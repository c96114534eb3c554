import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { readSample } from "./sample-files.ts";

const check = () => checkJob(readSample("sweeper/job.json"), "sweeper14");

const found = (severity: string) =>
  check()
    .findings.filter((finding) => finding.severity === severity)
    .map(({ rule, subjects }) => `${rule} ${subjects[0]}`)
    .sort();

test("the circuit decides every pin of the pump hold module", () => {
  const roles = check().roles.map((role) => [role.pin, role.fits.join(), role.circuitSide]);
  expect(roles).toEqual([
    ["A1:1", "switched-supply", null],
    ["A1:2", "input", "high"],
    ["A1:3", "output", "high"],
    ["A1:4", "ground", null],
    ["A1:5", "input", "low"],
    ["A1:6", "output", "high"],
  ]);
});

test("the four shifted words are contradicted, and one of them by the meter too", () => {
  expect(found("contradiction")).toEqual([
    "printed-role-contradicted A1:1",
    "printed-role-contradicted A1:2",
    "printed-role-contradicted A1:3",
    "printed-role-contradicted A1:4",
    "reading-contradicts-printed R2",
  ]);
});

test("the warnings are the shift, the strange wire and the four readings of the bad splice", () => {
  expect(found("warning")).toEqual([
    "colour-differs X1:6",
    "printed-roles-rearranged A1",
    "reading-unexpected R11",
    "reading-unexpected R6",
    "reading-unexpected R7",
    "reading-unexpected R9",
  ]);
});

test("nothing else is worth a note", () => {
  expect(found("note")).toEqual([]);
});

test("the rearrangement names the pin that each word belongs to", () => {
  const finding = check().findings.find(({ rule }) => rule === "printed-roles-rearranged");
  for (const [word, pin] of [
    ["IGN", "A1:1"],
    ["TRIG", "A1:2"],
    ["OUT", "A1:3"],
    ["GND", "A1:4"],
  ] as const) {
    expect(finding?.message).toMatch(new RegExp(`${word}[^,]*${pin}`));
  }
});

test("an untraced copy of the same scan says nothing at all", () => {
  expect(checkJob(readSample("sweeper/blank.json"), "sweeper14").findings).toEqual([]);
});
