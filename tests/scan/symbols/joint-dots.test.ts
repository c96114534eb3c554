import { describe, expect, test } from "vitest";
import { distance, type Point, seededRandom } from "../../../src/base/index.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { findParts } from "../../../src/scan/symbols/find-parts.ts";
import { findJointDots } from "../../../src/scan/symbols/joint-dots.ts";
import { harmed, randomHarm } from "../../support/drawn-pages/degrade.ts";
import { drawPage } from "../../support/drawn-pages/draw.ts";
import { type MadePage, makePage, type Place } from "../../support/drawn-pages/lattice.ts";
import { randomStyle } from "../../support/drawn-pages/style.ts";
import { drawAlone } from "../../support/drawn-symbols/page.ts";

/** `PINTRUTH_SEED` tries other pages: its number and the ones that follow. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const PAGES = 6;
const DPI = 200;
const SURE = 0.8;

/** Places of the lattice at which three lines or more of one net meet. */
function jointsOf({ nets }: MadePage): Place[] {
  return nets.flatMap(({ steps }) => {
    const count = new Map<string, number>();
    for (const [x, y] of steps.flat()) count.set(`${x},${y}`, (count.get(`${x},${y}`) ?? 0) + 1);
    return [...count]
      .filter(([, lines]) => lines > 2)
      .map(([name]) => name.split(",").map(Number) as unknown as Place);
  });
}

/** Dots that are drawn on the page of a seed, and dots that are proposed of it, pixels of the picture. */
async function dotsOf(seed: number, level: number) {
  const random = seededRandom(seed);
  const page = makePage(random, 24, 16);
  const style = { ...randomStyle(random), dotsAtTs: true, wordsOnLines: false };
  const drawn = drawPage(random, page, style, DPI);
  const line = Math.max(1, (style.line * DPI) / 25.4);
  const harm = { ...randomHarm(random, level), slant: 0 };
  const out = await harmed(random, drawn.picture, harm, line);
  const pitch = (style.pitch * DPI) / 25.4;
  const parts = drawn.parts.map(([left, top, right, bottom]) => {
    const [a, b] = [out.moved([left, top]), out.moved([right, bottom])];
    return { left: a[0], top: a[1], right: b[0], bottom: b[1] };
  });
  const found = finished(findJointDots(finished(preparePage(greyFrom(out.picture))), parts));
  // Where the lattice lies on the page, by one of its terminals.
  const [known] = page.nets.flatMap(({ terminals }) => terminals);
  if (!known) throw new Error("a page without a terminal");
  const there = drawn.terminals[known.name] as Point;
  const at = ([x, y]: Place): Point =>
    out.moved([there[0] + (x - known.at[0]) * pitch, there[1] + (y - known.at[1]) * pitch]);
  return { drawn: jointsOf(page).map(at), found, reach: 0.35 * pitch };
}

async function score(level: number) {
  let [drawn, seen, sure, right] = [0, 0, 0, 0];
  for (let n = 0; n < PAGES; n++) {
    const page = await dotsOf(SEED + n, level);
    const dots = page.found.filter(({ confidence }) => confidence >= SURE);
    const isNear = (a: Point, b: Point) => distance(a, b) < page.reach;
    drawn += page.drawn.length;
    seen += page.drawn.filter((at) => dots.some((dot) => isNear(dot.at, at))).length;
    sure += dots.length;
    right += dots.filter((dot) => page.drawn.some((at) => isNear(dot.at, at))).length;
  }
  return { drawn, recall: seen / drawn, precision: right / sure };
}

describe("dots of joints, on pages whose joints are known", () => {
  test("clean prints", async () => {
    const { drawn, recall, precision } = await score(0);
    expect(drawn).toBeGreaterThan(30);
    expect(recall, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.9);
    expect(precision, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.95);
  }, 60_000);

  test("copies", async () => {
    const { recall, precision } = await score(0.4);
    expect(recall, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.8);
    expect(precision, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.95);
  }, 60_000);
});

test("a T and a crossing without a dot are none, and a dot on a symbol found is none", () => {
  const picture = drawAlone(800, 500, 4, (pen) => {
    const wire = (...points: readonly Point[]) => {
      pen.beginPath();
      for (const at of points) pen.lineTo(...at);
      pen.stroke();
    };
    const dot = (x: number, y: number) => {
      pen.beginPath();
      pen.arc(x, y, 8, 0, 2 * Math.PI);
      pen.fill();
    };
    wire([40, 100], [760, 100]);
    wire([200, 100], [200, 460]);
    wire([400, 40], [400, 300]);
    wire([600, 100], [600, 300]);
    dot(600, 100);
    wire([240, 380], [760, 380]);
    pen.strokeRect(440, 356, 120, 48);
    dot(440, 380);
  });
  const page = finished(preparePage(greyFrom(picture)));
  const found = finished(findParts(page, { examples: [] }));
  const dots = found.filter(({ kind }) => kind === "splice");
  expect(dots).toHaveLength(1);
  expect(distance(dots[0]?.at ?? [0, 0], [600, 100])).toBeLessThan(2);
});
