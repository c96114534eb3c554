import { expect, test } from "vitest";
import type { Branch } from "../../../src/scan/lines/branch.ts";
import { Links } from "../../../src/scan/lines/links.ts";
import type { PreparedPage } from "../../../src/scan/lines/prepared-page.ts";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { strayPlaces } from "../../../src/scan/lines/stray-lines.ts";
import { bitsFromText } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

const PAGE = { lineWidth: 1 } as PreparedPage;

/** A line across with a bump of the ink on it. */
const SKELETON = finished(
  skeletonOf(
    bitsFromText([
      "                     ",
      "          #          ",
      "          #          ",
      "          #          ",
      "          #          ",
      "          #          ",
      " ################### ",
      "                     ",
    ]),
  ),
);

/** Number of the stretch at a place. */
const stretchAt = (x: number, y: number) =>
  SKELETON.stretches.findIndex(({ pixels }) => pixels.includes(y * SKELETON.width + x));
const [LEFT, RIGHT, BUMP] = [stretchAt(4, 6), stretchAt(16, 6), stretchAt(10, 3)];

const endAt = (stretch: number, x: number): Branch => {
  const from = SKELETON.nodes[SKELETON.stretches[stretch]?.from ?? -1];
  return { stretch, isFrom: Math.abs((from?.x ?? 0) - x) <= 1 };
};
const columnsGone = (links: Links) =>
  [...strayPlaces(PAGE, SKELETON, links, [[4, 6]])].map((place) => place % SKELETON.width);

test("what is no line goes on over a bump of its own ink, and takes the bump along", () => {
  expect(new Set([LEFT, RIGHT, BUMP, -1]).size).toBe(4);
  const links = new Links(SKELETON);
  const ends = [endAt(LEFT, 10), endAt(RIGHT, 10)];
  links.junction({ at: [10, 6], radius: 2, ends, bumps: [BUMP] });
  const columns = columnsGone(links);
  expect(Math.max(...columns)).toBeGreaterThan(17);
  expect(columns).toContain(10);
});

test("where three lines are joined it ends, and the others stay", () => {
  const links = new Links(SKELETON);
  const ends = [endAt(LEFT, 10), endAt(RIGHT, 10), endAt(BUMP, 10)];
  links.junction({ at: [10, 6], radius: 2, ends, bumps: [] });
  expect(Math.max(...columnsGone(links))).toBeLessThan(11);
});
