import { describe, expect, test } from "vitest";
import {
  adapterFrom,
  D65,
  labOf,
  screenColour,
  xyzOf,
  xyzOfLab,
} from "../../../src/scan/colours/adaptation.ts";

describe("colours under another white", () => {
  /** Illuminant A to D65 in Bradford's cones, as Bruce Lindbloom's tables print it (from memory). */
  test("are those of the published matrix from illuminant A to D65", () => {
    const adapted = adapterFrom([1.0985, 1, 0.35585]);
    const columns = [adapted([1, 0, 0]), adapted([0, 1, 0]), adapted([0, 0, 1])];
    const published = [
      [0.8446965, -0.1366303, 0.0798489],
      [-0.1179225, 1.1041226, -0.1348999],
      [0.3948108, 0.1291718, 3.1924009],
    ];
    published.forEach((column, which) => {
      column.forEach((value, row) => {
        expect(columns[which]?.[row]).toBeCloseTo(value, 2.7);
      });
    });
  });

  test("the white itself becomes D65", () => {
    const adapted = adapterFrom([0.8, 0.6, 0.2])([0.8, 0.6, 0.2]);
    adapted.forEach((value, i) => {
      expect(value).toBeCloseTo(D65[i] as number, 5);
    });
  });

  test("L*a*b* leads back to where it came from, and to the screen", () => {
    const [x, y, z] = xyzOfLab(labOf(xyzOf(200, 40, 90)));
    const start = xyzOf(200, 40, 90);
    [x, y, z].forEach((value, i) => {
      expect(value).toBeCloseTo(start[i] as number, 9);
    });
    expect(screenColour(labOf(xyzOf(200, 40, 90)))).toBe("#c8285a");
  });
});
