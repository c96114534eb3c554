import { expect, test } from "vitest";
import { createChecker } from "../../src/check/index.ts";
import { findingsOf, lampModule, matched, testExamplesOfPage } from "../support/check-example.ts";

const RULE = "cavity-empty";

testExamplesOfPage(RULE);

test("tells a blocked cavity from an empty one", () => {
  const cavities = [{ mark: "1", blocked: true }, { mark: "2", empty: true }, { mark: "3" }];
  const found = findingsOf(RULE, matched(lampModule(), cavities).job);
  expect(found.map((one) => one.subjects)).toEqual([
    ["X1:1", "A1:1"],
    ["X1:2", "A1:2"],
  ]);
  expect(found[0]?.message).toContain("is blocked");
  expect(found[1]?.message).toContain("is empty");
});

test("a pin that nothing is drawn to may have an empty cavity, until a wire is drawn to it", () => {
  const circuit = lampModule();
  const module = circuit.job.diagram.parts.find((part) => part.id === "A1");
  if (module?.kind === "module") module.pins.push({ id: "4", printed: "NC" });
  const cavities = ["1", "2", "3"].map((mark) => ({ mark }));
  const { job } = matched(
    circuit,
    [...cavities, { mark: "4", blocked: true }],
    [
      ["A1:1", "X1:1"],
      ["A1:2", "X1:2"],
      ["A1:3", "X1:3"],
      ["A1:4", "X1:4"],
    ],
  );
  expect(findingsOf(RULE, job)).toEqual([]);
  const wire = { id: "W99", from: "A1:4", to: "P1:1" };
  const drawn = {
    ...job,
    diagram: { ...job.diagram, wires: [...job.diagram.wires, wire] },
  };
  const checker = createChecker("machine1");
  checker.check(job);
  const found = checker.check(drawn).findings.filter((one) => one.rule === RULE);
  expect(found.map((one) => one.subjects)).toEqual([["X1:4", "A1:4"]]);
});
