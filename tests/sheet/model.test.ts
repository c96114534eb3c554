import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Job } from "../../src/job/index.ts";
import { type SheetOptions, sheetModel } from "../../src/sheet/index.ts";
import { eightWayCheck, eightWayJob } from "./fixtures.ts";

const options: SheetOptions = { side: "wire", size: "A4", date: "2025-11-14", revision: "A" };
const model = (more: Partial<SheetOptions> = {}) =>
  sheetModel(eightWayJob(), "M1", { ...options, check: eightWayCheck(), ...more });
const row = (mark: string) => {
  const found = model().rows.find((one) => one.mark === mark);
  if (!found) throw new Error(`no row ${mark}`);
  return found;
};

test("one row a cavity, in the plug's order, unused ones included", () => {
  expect(model().rows.map((one) => [one.mark, one.state])).toEqual([
    ["1", "wired"],
    ["2", "wired"],
    ["3", "wired"],
    ["4", "wired"],
    ["5", "wired"],
    ["6", "wired"],
    ["7", "empty"],
    ["8", "blocked"],
  ]);
});

test("the machine's own colour comes before the diagram's, and both are told", () => {
  expect(row("5")).toMatchObject({
    colourCode: "YERD",
    diagramColourCode: "YE",
    wireFrom: "machine",
  });
  expect(row("2")).toMatchObject({
    colourCode: "BNBK",
    diagramColourCode: "",
    wireFrom: "diagram",
  });
});

test("only a contradicted word is wrong; an undecided pin names what fits", () => {
  expect(
    model()
      .rows.filter((one) => one.wrong)
      .map((one) => one.mark),
  ).toEqual(["4", "5"]);
  expect(row("6").is).toBe("input or output");
  expect(row("4")).toMatchObject({ is: "ground", by: "G1 frame, left rail" });
});

test("findings of other places stay off the sheet", () => {
  const { contradictions, warnings } = model();
  expect(contradictions.map((one) => one.marks)).toEqual(["4", "5"]);
  expect(warnings.map((one) => one.marks)).toEqual(["5"]);
});

test("the other side is a true mirror image and is named", () => {
  const wire = model().face;
  const mating = model({ side: "mating" });
  expect(mating.sideWords).toContain("mating side");
  const lefts = (cavities: typeof wire.cavities) =>
    [...cavities].sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]).map((one) => one.mark);
  expect(lefts(wire.cavities)).toEqual(["1", "2", "3", "4", "5", "6", "7", "8"]);
  expect(lefts(mating.face.cavities)).toEqual(["4", "3", "2", "1", "8", "7", "6", "5"]);
});

test("a reading counts at a pin only while the module is plugged in", () => {
  const job = eightWayJob();
  const [machine] = job.machines;
  if (!machine) throw new Error("no machine");
  const [first] = machine.readings;
  if (!first) throw new Error("no reading");
  const evidence = (when: object) => {
    machine.readings = [{ ...first, red: "A1:3", when }];
    const rows = sheetModel(job, "M1", { ...options, check: eightWayCheck() }).rows;
    return rows.find((one) => one.mark === "3")?.evidence;
  };
  expect(evidence({})).toContain("25.40 V");
  expect(evidence({ unplugged: ["A1"] })).toBe("not measured");
});

test("a job without that plug or machine is the caller's error", () => {
  expect(() => sheetModel(eightWayJob(), "M9", options)).toThrow('no machine "M9"');
  expect(() => model({ plug: "X9" })).toThrow('no plug "X9"');
});

test("only a reading that shows something present confirms, and what else differs is told", () => {
  const job: Job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
  const machine = job.machines[0]?.id ?? "";
  const rows = sheetModel(job, machine, options).rows;
  const at = (mark: string) => rows.find((one) => one.mark === mark);
  // R2: a test lamp burns at 24.6 V; R11: plugged in only 11.7 V reach the module.
  expect(at("1")).toMatchObject({ proved: true, faulty: true });
  expect(at("1")?.evidence).toMatch(/^24\.60 V, as expected, .*but 1 not as expected$/);
  // R3: open-circuit volts come through one strand and prove nothing.
  expect(at("2")).toMatchObject({ proved: false, faulty: false });
  // R6: 22 Ω where a ground should be.
  expect(at("4")).toMatchObject({ proved: false, faulty: true });
});
