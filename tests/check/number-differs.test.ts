import { expect, test } from "vitest";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  testExamplesOfPage,
} from "../support/check-example.ts";

const RULE = "number-differs";

testExamplesOfPage(RULE);

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
