import { expect, test } from "vitest";
import { distanceToPaper } from "../../src/scan/distance.ts";
import { bitsFromText } from "../../src/scan/raster.ts";

/** Counted by hand: three to a pixel aside, four to one at a slant; beyond the picture lies paper. */
test("ink lies so far from paper", () => {
  const far = distanceToPaper(
    bitsFromText([
      "         ", //
      " ####### ",
      " ####### ",
      " ####### ",
      " ####### ",
      " ######  ",
      "      ###",
    ]),
  );
  const rows = Array.from({ length: 7 }, (_, y) => [...far.slice(9 * y, 9 * y + 9)].join(""));
  expect(rows).toEqual([
    "000000000",
    "033333330",
    "036666630",
    "036998630",
    "036666430",
    "033333300",
    "000000333",
  ]);
});

test("a row wider than 32 pixels is counted across all of it", () => {
  const row = "#".repeat(70);
  const far = distanceToPaper(bitsFromText([row, row, row, row, row]));
  expect([...far.slice(2 * 70, 3 * 70)]).toEqual([3, 6, ...Array(66).fill(9), 6, 3]);
});
