import { expect, test } from "vitest";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  reading,
  testExamplesOfPage,
} from "../support/check-example.ts";

const RULE = "reading-contradicts-circuit";

testExamplesOfPage(RULE);

const job = (value: number, more: Parameters<typeof reading>[2] = {}) =>
  onMachine(matched(lampModule()), { readings: [reading("R1", value, more)] });

test("says what the circuit gives, what one fault could, and how to read again", () => {
  const [found] = findingsOf(RULE, job(-25.1));
  expect(found?.subjects).toEqual(["R1", "X1:1", "chassis"]);
  expect(found?.message).toMatch(/−25\.1 V.*25\.2 V.*below −6\.00 V.*leads exchanged/);
});

test("speaks in place of the warning, never beside it", () => {
  expect(findingsOf("reading-unexpected", job(-25.1))).toEqual([]);
  expect(findingsOf("reading-unexpected", job(3.1))).toHaveLength(1);
});

test("is silent about absence, about ohms, and about what nobody has said", () => {
  expect(findingsOf(RULE, job(0))).toEqual([]);
  expect(findingsOf(RULE, job(4000, { quantity: "ohms", red: "X1:3" }))).toEqual([]);
  expect(findingsOf(RULE, job(-25.1, { when: { unplugged: ["A1"], engine: "running" } }))).toEqual(
    [],
  );
});

test("speaks of volts where nothing should stand at all", () => {
  const circuit = lampModule().module("A3", { "1": null });
  const loose = matched(circuit, [{ mark: "1" }], [["A3:1", "X1:1"]]);
  const readings = [reading("R1", 60, { when: { unplugged: ["A1", "A3"] } })];
  const [found] = findingsOf(RULE, onMachine(loose, { readings }));
  expect(found?.message).toMatch(/nothing holds this point.*above 33/);
});
