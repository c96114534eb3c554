import "../../../support/seed.ts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Point, type Random, seededRandom } from "../../../../src/base/index.ts";
import type { Job, Wire } from "../../../../src/job/index.ts";
import { type ReadWord, shapeOf } from "../../../../src/session/index.ts";
import {
  isInSymbol,
  nearParts,
  nearWires,
  pinsBeside,
  pinsInside,
  placesOf,
  type WordPlaces,
} from "../../../../src/session/scan/words/word-places.ts";
import { drawing } from "../../diagram/drawing.ts";

const KINDS = ["fuse", "lamp", "splice", "relay", "module"] as const;
const PINS = ["1", "2", "3", "4", "5"].map((id) => ({ id }));
const [WIDE, HIGH] = [2400, 1600];

/** Parts strewn over a sheet beyond its rim, some of them within others, and wires between some of their pins. */
function strewn(random: Random): Job {
  const place = (): [number, number] => [
    (WIDE + 400) * random.next() - 200,
    (HIGH + 400) * random.next() - 200,
  ];
  const parts = Array.from({ length: 40 }, (_, n) => ({
    id: `P${n}`,
    kind: random.pick(KINDS),
    pins: PINS,
    at: place(),
    turn: random.pick([0, 90, 180, 270] as const),
    unit: random.pick([4, 10, 30]),
  }));
  const bare = drawing(parts as Parameters<typeof drawing>[0]);
  const pins = bare.diagram.parts.flatMap((part) => shapeOf(part).pins.map(({ ref }) => ref));
  const wires = Array.from({ length: 60 }, (_, n): Wire => {
    const corners = Array.from({ length: random.below(4) }, place);
    const path = corners.length > 0 ? { path: corners } : {};
    return { id: `W${n + 1}`, from: random.pick(pins), to: random.pick(pins), ...path };
  });
  return drawing(parts as Parameters<typeof drawing>[0], wires);
}

/** A word of any size, at a place of the drawing or anywhere. */
function word(random: Random, spots: readonly Point[]): ReadWord {
  const tall = random.pick([6, 20, 60]);
  const spot = random.pick(spots);
  const aside = () => 8 * tall * (random.next() - 0.5);
  const left = random.chance(0.8) ? spot[0] + aside() : WIDE * random.next();
  const top = random.chance(0.8) ? spot[1] + aside() : HIGH * random.next();
  const turn = random.pick([0, 90] as const);
  const long = tall * (1 + 5 * random.next());
  const [across, down] = turn === 0 ? [long, tall] : [tall, long];
  return {
    id: "word",
    box: { left, top, right: left + across, bottom: top + down },
    ...{ turn, tall, text: "W", sure: 95, doubts: [], isPrint: true, others: [] },
  };
}

/** The same places, where everything is looked at whatever is asked. */
function withoutGrid(job: Job, places: WordPlaces): WordPlaces {
  const parts = job.diagram.parts.map(shapeOf);
  const at = new Map(parts.flatMap(({ pins }) => pins.map((pin) => [pin.ref, pin.at] as const)));
  const pieces = job.diagram.wires.flatMap(({ id, from, to, path }) => {
    const line = [at.get(from) as Point, ...(path ?? []), at.get(to) as Point];
    return line.slice(1).map((end, n) => ({ wire: id, from: line[n] as Point, to: end }));
  });
  return { ...places, partsNear: () => parts, piecesNear: () => pieces };
}

test("what a word lies near is found as by a look at every part and every piece of wire", () => {
  let found = 0;
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const random = seededRandom(seed);
      const job = strewn(random);
      const places = placesOf(job, "s1", []);
      const slow = withoutGrid(job, places);
      const spots = [
        ...job.diagram.parts.map(({ at }) => at),
        ...job.diagram.parts.flatMap((part) => shapeOf(part).pins.map(({ at }) => at)),
        ...job.diagram.wires.flatMap(({ path }) => path ?? []),
      ];
      for (let n = 0; n < 20; n++) {
        const one = word(random, spots);
        const near = (of: WordPlaces) => [
          nearParts(of, one),
          nearWires(of, one),
          pinsBeside(of, one),
          pinsInside(of, one),
        ];
        expect(near(places)).toEqual(near(slow));
        expect(isInSymbol(places, one)).toBe(isInSymbol(slow, one));
        found += near(places).flat().length;
      }
    }),
    { numRuns: 40 },
  );
  expect(found).toBeGreaterThan(100);
});
