import { expect, test } from "vitest";
import { netsSummary } from "../../../../src/editor/boards/diagram/scan/nets-summary.ts";
import type { DrawnOtherwise } from "../../../../src/session/index.ts";

const differing = (otherwise: number, same: number) => ({
  otherwise: Array<DrawnOtherwise>(otherwise),
  same,
});

test("while the lines are followed anew, nothing is said to be complete", () => {
  for (const same of [0, 3])
    expect(netsSummary(differing(0, same), 0, 0, true)).toBe("Following the lines anew…");
  expect(netsSummary(differing(0, 0), 0, 2, true)).toBe(
    "2 lines left aside. Following the lines anew…",
  );
  expect(netsSummary(differing(0, 5), 1, 2, true)).toBe(
    "1 line to look at. Following the lines anew…",
  );
});

test("with nothing found it says what lines are followed between", () => {
  expect(netsSummary(differing(0, 0), 0, 0, false)).toMatch(/^No line joins two placed pins\./);
});

test("what is to look at, drawn otherwise and drawn the same", () => {
  expect(netsSummary(differing(0, 4), 0, 0, false)).toBe(
    "Nothing is missing. 4 lines drawn as on the picture.",
  );
  expect(netsSummary(differing(0, 1), 0, 1, false)).toBe(
    "1 line left aside. 1 line drawn as on the picture.",
  );
  expect(netsSummary(differing(1, 0), 2, 0, false)).toBe(
    "2 lines to look at. 1 place is drawn otherwise.",
  );
  expect(netsSummary(differing(2, 1), 0, 0, false)).toBe(
    "Nothing is missing. 2 places are drawn otherwise. 1 line drawn as on the picture.",
  );
});
