import { describe, expect, test } from "vitest";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { zonesOf } from "../../../src/scan/lines/zones.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { pageFromText, times } from "../../support/drawn-pages/text-page.ts";

const LINE = 3;

/** Places where more than two lines meet, or that have bumps; `kept` says which ends are lines' ends. */
function zones(drawing: readonly string[], kept: "none" | "all" = "none") {
  const page = pageFromText(drawing, LINE);
  const skeleton = finished(skeletonOf(page.thinned));
  const ends = skeleton.nodes.flatMap(({ stretches }, node) =>
    stretches.length === 1 ? [node] : [],
  );
  return finished(zonesOf(page, skeleton, new Set(kept === "all" ? ends : [])))
    .filter(({ branches, inside }) => branches.length + inside.length > 2)
    .map(({ at, branches, inside, blob }) => ({
      at: at.map(Math.round),
      branches: branches.length,
      inside: inside.length,
      blob,
    }));
}

const BLANK = "                           ";
const ALONG = "  #######################  ";
const UP = "            ###            ";

describe("where lines meet", () => {
  test("a square crossing is one place with four lines, and no blob", () => {
    const [zone, ...others] = zones([
      BLANK,
      ...times(11, UP),
      ...times(3, ALONG),
      ...times(11, UP),
    ]);
    expect(others).toEqual([]);
    expect(zone).toMatchObject({ at: [13, 13], branches: 4 });
    expect(zone?.blob).toBeLessThan(LINE);
  });

  test("a crossing whose halves don't quite meet, which thins to two forks, is one place", () => {
    const lower = "               ###         ";
    const found = zones([BLANK, ...times(11, UP), ...times(3, ALONG), ...times(11, lower)]);
    expect(found).toHaveLength(1);
    expect(found[0]?.branches).toBe(4);
  });

  test("two crossings three lines apart are two places", () => {
    const [blank, both, along] = [
      "                                   ",
      "             ###      ###          ",
      "  ###############################  ",
    ] as const;
    const found = zones([blank, ...times(11, both), ...times(3, along), ...times(11, both)]);
    expect(found.map(({ branches }) => branches)).toEqual([4, 4]);
  });

  test("a dot is the largest solid ink on its lines, half a line more than they have", () => {
    const [zone] = zones([
      BLANK,
      ...times(8, UP),
      "           #####           ",
      "          #######          ",
      "         #########         ",
      ...times(3, "  #######################  "),
      "         #########         ",
      "          #######          ",
      "           #####           ",
      ...times(8, UP),
    ]);
    expect(zone?.branches).toBe(4);
    expect(zone?.blob).toBeGreaterThanOrEqual(4);
    expect(zone?.blob).toBeLessThanOrEqual(5);
  });

  const BUMP = [
    ...times(8, BLANK),
    ...times(4, "            ###            "),
    ...times(3, ALONG),
    ...times(8, BLANK),
  ];

  test("a bump of the ink is no line that leaves the place", () => {
    expect(zones(BUMP)).toMatchObject([{ branches: 2, inside: 1 }]);
  });

  test("but it is one where a line is known to end or to go on over a hole", () => {
    expect(zones(BUMP, "all")).toMatchObject([{ branches: 3, inside: 0 }]);
  });

  test("a fine net of lines all over a page is one place, however much lies in it", () => {
    const [along, up] = ["#".repeat(801), "#   ".repeat(200).concat("#")] as const;
    const drawing = Array.from({ length: 601 }, (_, y) => (y % 4 === 0 ? along : up));
    const [net, ...others] = zones([" ".repeat(801), ...drawing, " ".repeat(801)]);
    expect(others).toEqual([]);
    expect(net?.inside).toBeGreaterThan(50_000);
    expect(net?.blob).toBeLessThan(LINE);
  });
});
