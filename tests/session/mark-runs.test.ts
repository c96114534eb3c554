import { expect, test } from "vitest";
import { markRuns } from "../../src/session/index.ts";

test("marks that follow one another are drawn together, from three on", () => {
  expect(markRuns(["1", "2", "3", "4", "7", "9", "10"])).toBe("1 to 4, 7, 9, 10");
  expect(markRuns(["A", "B", "C", "E", "1"])).toBe("A to C, E, 1");
  expect(markRuns(["9", "10", "11"])).toBe("9 to 11");
  expect(markRuns([])).toBe("");
});

test("marks that nobody would count on from stand alone", () => {
  expect(markRuns(["01", "02", "03"])).toBe("01, 02, 03");
  expect(markRuns(["z", "{", "Z", "a"])).toBe("z, {, Z, a");
  expect(markRuns(["3", "2", "1"])).toBe("3, 2, 1");
});
