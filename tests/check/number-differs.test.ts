import { expect, test } from "vitest";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  pageExamples,
} from "../support/check-example.ts";

const RULE = "number-differs";

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

test("case and surrounding spaces make no difference, digits do", () => {
  const numbered = (here: string) => {
    const circuit = matched(lampModule());
    const wire = circuit.job.diagram.wires.find((one) => one.from === "A1:3");
    if (wire) wire.number = "L117";
    return onMachine(circuit, { wires: [{ cavity: "X1:3", number: here }] });
  };
  expect(findingsOf(RULE, numbered(" l117 "))).toEqual([]);
  expect(findingsOf(RULE, numbered("L171"))[0]?.message).toMatch(/L171.*L117/);
});
