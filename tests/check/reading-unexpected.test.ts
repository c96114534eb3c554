import { expect, test } from "vitest";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  reading,
  testExamplesOfPage,
} from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

const RULE = "reading-unexpected";

testExamplesOfPage(RULE);

test("gives the value and the band of a healthy machine", () => {
  const job = onMachine(matched(lampModule()), { readings: [reading("R1", 3.1)] });
  const [found] = findingsOf(RULE, job);
  expect(found?.subjects).toEqual(["R1", "X1:1", "chassis"]);
  expect(found?.message).toMatch(/3\.10 V.*2\d\.\d V/);
});

test("is silent at a point that depends on something not traced", () => {
  const circuit = withBattery().module("A1", { "1": null }).part("offpage", "X9").wire("A1:1 X9:1");
  const job = onMachine(matched(circuit, [{ mark: "1" }], [["A1:1", "X1:1"]]), {
    readings: [reading("R1", 3.1)],
  });
  expect(findingsOf(RULE, job)).toEqual([]);
});

test("names the likeliest single faults that give the value", () => {
  const job = onMachine(matched(lampModule()), { readings: [reading("R1", 0)] });
  const [found] = findingsOf(RULE, job);
  expect(found?.message).toMatch(/likeliest first: an open between G1:\+ and X1:1 \(W2, F1, W3\);/);
});

test("names a short with the fuse that it blows, and says so where none fits", () => {
  const near = (value: number) =>
    findingsOf(
      RULE,
      onMachine(matched(lampModule()), { readings: [reading("R1", value, { red: "X1:3" })] }),
    )[0]?.message;
  expect(near(25)).toMatch(/X1:3 touching X1:1/);
  expect(near(29)).toMatch(/No single fault that was tried/);
});

test("however many readings are off, the faults of each are named", () => {
  const readings = Array.from({ length: 120 }, (_, index) => reading(`R${index}`, 0));
  const found = findingsOf(RULE, onMachine(matched(lampModule()), { readings }));
  expect(found).toHaveLength(readings.length);
  expect(found.filter(({ message }) => !message.includes("an open between G1:+"))).toEqual([]);
});
