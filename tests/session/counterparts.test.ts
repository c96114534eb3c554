import { expect, test } from "vitest";
import type { Finding } from "../../src/check/index.ts";
import { counterparts, findingKey, findingWithKey } from "../../src/session/index.ts";
import { checked, role, smallJob } from "./support/small-job.ts";

const swapped: Finding = {
  rule: "printed-role-contradicted",
  severity: "contradiction",
  subjects: ["A1:2"],
  message: "Pin 2 is printed OUT.",
  because: ["W3", "P1", "W4"],
};
const analysis = checked(
  [role("A1:1", { cavity: "X1:1", because: ["W2", "F1", "W1", "G1"] }), role("A1:2")],
  [swapped],
);
const lit = (...selection: string[]) => counterparts(smallJob(), analysis, selection);

test("a module pin lights its cavity, its wire, its path and the readings taken there", () => {
  const { refs, path } = lit("A1:1");
  expect([...refs].sort()).toEqual(["A1:1", "W2", "X1:1", "reading1"]);
  expect(path).toEqual(["W2", "F1", "W1", "G1"]);
});

test("a cavity lights the same things as the pin that sits in it", () => {
  expect([...lit("X1:1").refs].sort()).toEqual([...lit("A1:1").refs].sort());
  expect(lit("X1:1").path).toEqual(lit("A1:1").path);
});

test("a pin and its cavity light the findings about that pin", () => {
  expect(lit("A1:2").refs).toContain(findingKey(swapped));
  expect(lit("X1:2").refs).toContain(findingKey(swapped));
  expect(lit("A1:1").refs).not.toContain(findingKey(swapped));
});

test("a wire lights its two pins and the cavities tied to them", () => {
  expect([...lit("W3").refs].sort()).toEqual(["A1:2", "P1:1", "W3", "X1:2"]);
  expect(lit("W3").path).toEqual([]);
});

test("a part lights its pins, and a module the cavities tied to them too", () => {
  expect([...lit("P1").refs].sort()).toEqual(["P1", "P1:1", "P1:2"]);
  expect(lit("A1").refs).toContain("X1:1");
});

test("a finding lights its subjects and draws the path that proves it", () => {
  const { refs, path } = lit(findingKey(swapped));
  expect([...refs].sort()).toEqual([findingKey(swapped), "A1:2", "X1:2"].sort());
  expect(path).toEqual(["W3", "P1", "W4"]);
});

test("a reading lights where its probes were held, and the path of the red one", () => {
  const { refs, path } = lit("reading1");
  expect([...refs].sort()).toEqual(["A1:1", "X1:1", "chassis", "reading1"]);
  expect(path).toEqual(["W2", "F1", "W1", "G1"]);
});

test("the path is that of the chief thing chosen, the lights are of all", () => {
  const { refs, path } = lit("A1:1", "P1");
  expect(refs).toContain("P1:2");
  expect(path).toEqual(["W2", "F1", "W1", "G1"]);
});

test("a finding that no longer holds lights nothing but its own key", () => {
  const gone = "finding:dead-short:F9";
  expect(findingWithKey(analysis, gone)).toBeNull();
  expect([...lit(gone).refs]).toEqual([gone]);
});

test("marks with commas in them do not confuse finding keys", () => {
  const odd: Finding = { ...swapped, subjects: ["X1:a,b", "X1:c"] };
  expect(findingWithKey(checked([], [odd]), findingKey(odd))).toBe(odd);
});
