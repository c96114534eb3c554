import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  boundsOf,
  distance,
  nearestOnSegment,
  type Point,
  seededRandom,
} from "../../../src/base/index.ts";
import { greyFrom, type NetRun } from "../../../src/scan/index.ts";
import { harmed, randomHarm } from "../../support/drawn-pages/degrade.ts";
import { drawPage } from "../../support/drawn-pages/draw.ts";
import { makePage, type Place } from "../../support/drawn-pages/lattice.ts";
import { randomStyle } from "../../support/drawn-pages/style.ts";
import { tracedPicture } from "../../support/drawn-pages/traced-picture.ts";

type Segment = readonly [Point, Point];

/** Pixels: a raster does not tell where in a pixel a line lies. */
const RASTER = 0.5;

/** A drawn page, its nets as they were drawn and as they are traced, in pixels of the picture. */
async function pageOf(seed: number, level: number) {
  const random = seededRandom(seed);
  const page = makePage(random, 20, 15);
  // A rounded corner has no corner on the drawing, and nobody tells the program of words.
  const style = {
    ...randomStyle(random),
    rounding: 0,
    thick: 1,
    words: false,
    wordsOnLines: false,
  };
  const dpi = random.pick([150, 200]);
  const drawn = drawPage(random, page, style, dpi);
  const lineWidth = Math.max(2, (style.line * dpi) / 25.4);
  const { picture, moved } = await harmed(
    random,
    drawn.picture,
    randomHarm(random, level),
    lineWidth,
  );
  const placed = page.nets.flatMap((net) =>
    net.terminals.map(({ name, at }) => ({ at, point: drawn.terminals[name] as Point })),
  );
  const [across, down] = [scaleOf(placed, 0), scaleOf(placed, 1)];
  const place = ([column, row]: Place): Point => moved([across(column), down(row)]);
  const nets = page.nets.map(({ terminals, steps }) => ({
    names: terminals.map(({ name }) => name),
    steps: steps.map(([a, b]): Segment => [place(a), place(b)]),
  }));
  const terminals = Object.fromEntries(
    Object.entries(drawn.terminals).map(([name, at]) => [name, moved(at)]),
  );
  const parts = drawn.parts.flatMap(([left, top, right, bottom]) => {
    const corners: Point[] = [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ];
    return boundsOf(corners.map(moved)) ?? [];
  });
  return { nets, lineWidth, traced: tracedPicture(greyFrom(picture), { terminals, parts }) };
}

/** Where a column or row lies on the drawing, from two terminals that are known to lie on some. */
function scaleOf(placed: readonly { at: Place; point: Point }[], axis: 0 | 1) {
  const sorted = [...placed].sort((a, b) => a.at[axis] - b.at[axis]);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last || first.at[axis] === last.at[axis]) throw new Error("terminals in one line");
  const pitch = (last.point[axis] - first.point[axis]) / (last.at[axis] - first.at[axis]);
  return (of: number) => first.point[axis] + pitch * (of - first.at[axis]);
}

const farFrom = (point: Point, segments: readonly Segment[]) =>
  Math.min(...segments.map(([a, b]) => distance(point, nearestOnSegment(point, a, b))));

const segmentsOf = (runs: readonly NetRun[]): Segment[] =>
  runs.flatMap(({ points }) =>
    points.slice(1).map((point, n): Segment => [points[n] as Point, point]),
  );

/** Points along segments, some pixels apart. */
const pointsAlong = (segments: readonly Segment[]): Point[] =>
  segments.flatMap(([a, b]) => {
    const count = Math.max(1, Math.ceil(distance(a, b) / 5));
    return Array.from(
      { length: count + 1 },
      (_, n): Point => [a[0] + ((b[0] - a[0]) * n) / count, a[1] + ((b[1] - a[1]) * n) / count],
    );
  });

describe("nets of drawn pages", () => {
  test("lie on the lines as they were drawn, and every drawn line under a net", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 1_000_000 }), fc.nat(3), async (seed, tenths) => {
        const { nets, lineWidth, traced } = await pageOf(seed, tenths / 10);
        for (const net of traced.nets) {
          const real = nets.filter(({ names }) =>
            names.some((name) => net.terminals.includes(name)),
          );
          const drawn = real.flatMap(({ steps }) => steps);
          // Where a join is asked about, the line ends there.
          const isWhole = real.every(({ names }) =>
            names.every((name) => net.terminals.includes(name)),
          );
          if (!isWhole) continue;
          const runs = segmentsOf(net.runs);
          const near = lineWidth + RASTER;
          const astray = pointsAlong(runs).filter((point) => farFrom(point, drawn) > near);
          expect(astray, `${net.id} where nothing is drawn`).toEqual([]);
          const bare = pointsAlong(drawn).filter((point) => farFrom(point, runs) > near);
          expect(bare, `drawn where ${net.id} does not run`).toEqual([]);
        }
      }),
      { numRuns: 5 },
    );
  }, 120_000);
});
