import "../../support/seed.ts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Point, type Random, seededRandom } from "../../../src/base/index.ts";
import { type Job, ownerOf, referenceIssues, type Wire } from "../../../src/job/index.ts";
import { layNets, sceneOf, type WholeNet } from "../../../src/session/index.ts";
import { drawing, edit } from "../diagram/drawing.ts";
import { wholeNet } from "./picture-net.ts";

const KINDS = ["fuse", "lamp", "ground", "splice", "relay"] as const;

/** Parts strewn over a sheet, and wires between some of their pins, with and without corners. */
function strewn(random: Random): Job {
  const place = (): Point => [20 * random.below(60), 20 * random.below(40)];
  const parts = Array.from({ length: 3 + random.below(8) }, (_, n) => ({
    id: `P${n}`,
    kind: random.pick(KINDS),
    at: place() as [number, number],
  }));
  const bare = drawing(parts as Parameters<typeof drawing>[0]);
  const pins = pinsOf(bare);
  const wires = Array.from({ length: random.below(6) }, (_, n): Wire => {
    const path = random.chance(0.5) ? { path: [place() as [number, number]] } : {};
    return { id: `W${n + 1}`, from: random.pick(pins), to: random.pick(pins), ...path };
  }).filter(({ from, to }) => from !== to);
  return drawing(parts as Parameters<typeof drawing>[0], wires);
}

const pinsOf = (job: Job): readonly string[] => [...sceneOf(job.diagram, "s1").pins.keys()];

/** A tree of lines, with a ring here and there, that comes to these pins and to some free ends. */
function lineTree(random: Random, job: Job, pins: readonly string[]): WholeNet {
  const scene = sceneOf(job.diagram, "s1");
  const nodes: [Point, ...string[]][] = pins.map((ref) => {
    const [x, y] = scene.pins.get(ref)?.at ?? [0, 0];
    return [[x + random.next() * 8 - 4, y + random.next() * 8 - 4], ref];
  });
  const spots = [...scene.pins.values()].map(({ at }) => at);
  const free = (): Point =>
    random.chance(0.2)
      ? (random.pick(spots).map((place) => place + 12 * random.next() - 6) as unknown as Point)
      : [1200 * random.next(), 800 * random.next()];
  const joints = random.below(4) + (nodes.length > 2 ? 1 : 0);
  for (let n = 0; n < joints; n++) nodes.push([free()]);
  const corners = (): Point[] => Array.from({ length: random.below(3) }, free);
  const runs: [number, number, ...Point[]][] = [];
  for (let node = 1; node < nodes.length; node++) {
    runs.push([random.below(node), node, ...corners()]);
  }
  if (random.chance(0.3)) {
    runs.push([random.below(nodes.length), random.below(nodes.length), ...corners()]);
  }
  // Two pins on one place now and then, and nodes in no order.
  const [first, second] = nodes;
  if (pins.length > 2 && first && second && random.chance(0.3)) {
    first.push(...(second.splice(1) as string[]));
  }
  return wholeNet(nodes, runs);
}

/** Of each of these pins the lot of them that wires join it with, as sets worked out by walking. */
function lots(job: Job, pins: readonly string[]): Set<string> {
  const beside = new Map<string, string[]>();
  for (const { from, to } of job.diagram.wires) {
    beside.set(from, [...(beside.get(from) ?? []), to]);
    beside.set(to, [...(beside.get(to) ?? []), from]);
  }
  return new Set(
    pins.map((pin) => {
      const seen = new Set([pin]);
      for (const one of seen) for (const next of beside.get(one) ?? []) seen.add(next);
      return pins.filter((one) => seen.has(one)).join(" ");
    }),
  );
}

test("laying nets joins the pins that were joined and those of each net, and no others", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const random = seededRandom(seed);
      const before = strewn(random);
      const pins = pinsOf(before);
      const left = [...pins];
      const nets: WholeNet[] = [];
      while (left.length > 1 && nets.length < 3) {
        const take = Math.min(left.length, 1 + random.below(4));
        const own = Array.from({ length: take }, () => left.splice(random.below(left.length), 1));
        nets.push(lineTree(random, before, own.flat()));
      }
      const after = edit(before, (draft) => {
        layNets(draft, "s1", nets, []);
      });
      const wanted = edit(before, (draft) => {
        nets.forEach(({ terminals: [first, ...others] }, n) => {
          for (const [m, to] of others.entries())
            draft.diagram.wires.push({ id: `wanted ${n} ${m}`, from: first as string, to });
        });
      });
      // A splice that no wire and no net came to may be taken for a joint: it is a pin of nothing else.
      const scene = sceneOf(before.diagram, "s1");
      const named = new Set(nets.flatMap(({ terminals }) => terminals));
      const told = pins.filter((ref) => {
        const isSplice = scene.partById.get(ownerOf(ref))?.part.kind === "splice";
        return !isSplice || named.has(ref) || (scene.degree.get(ref) ?? 0) > 0;
      });
      expect(lots(after, told)).toEqual(lots(wanted, told));
      expect(referenceIssues(after)).toEqual([]);
      // Every wire that was there still is, from its one end to where it was split or to its other.
      for (const { id, from } of before.diagram.wires) {
        expect(after.diagram.wires.find((wire) => wire.id === id)?.from).toBe(from);
      }
      // What was made hangs on something: no splice with a single wire, no end without any.
      const ends = after.diagram.wires.flatMap((wire) => [wire.from, wire.to]);
      for (const { id, kind } of after.diagram.parts.slice(before.diagram.parts.length)) {
        const wires = ends.filter((ref) => ref === `${id}:1`).length;
        if (kind === "offpage") expect(wires).toBe(1);
        else expect(wires).toBeGreaterThan(1);
      }
    }),
    { numRuns: 150 },
  );
});
