import { describe, expect, test } from "vitest";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { bitsFromText } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

const graph = (...lines: string[]) => {
  const { nodes, stretches } = finished(skeletonOf(bitsFromText(lines)));
  const degrees = nodes.map((node) => node.stretches.length).sort();
  return { degrees, lengths: stretches.map(({ length }) => length).sort((a, b) => a - b) };
};

describe("the graph of thinned lines", () => {
  test("one line has two ends", () => {
    expect(graph("       ", " ##### ", "       ")).toEqual({ degrees: [1, 1], lengths: [4] });
  });

  test("a slanting step counts as the root of two", () => {
    const { degrees, lengths } = graph("     ", " #   ", "  #  ", "   # ", "     ");
    expect(degrees).toEqual([1, 1]);
    expect(lengths[0]).toBeCloseTo(2 * Math.SQRT2);
  });

  test("a T has one fork and three ends", () => {
    const { degrees } = graph("       ", " ##### ", "   #   ", "   #   ", "       ");
    expect(degrees).toEqual([1, 1, 1, 3]);
  });

  test("a closed ring is one stretch that comes back", () => {
    const { degrees, lengths } = graph("      ", "  ##  ", " #  # ", "  ##  ", "      ");
    expect(degrees).toEqual([2]);
    expect(lengths).toHaveLength(1);
  });
});
