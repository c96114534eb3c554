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

test("a face whose places nobody publishes says so beside the side that it is seen from", () => {
  const job = eightWayJob();
  const neutral = { ...job, plugs: job.plugs.map((plug) => ({ ...plug, neutral: true })) };
  for (const side of ["wire", "mating"] as const) {
    const { sideWords } = sheetModel(neutral, "M1", { ...options, side, check: eightWayCheck() });
    expect(sideWords).toMatch(
      /\. Positions are a neutral drawing: go by the moulded marks, never by where a cavity is drawn\.$/,
    );
  }
  expect(model().sideWords).not.toContain("neutral");
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

const sample = (name: string): Job =>
  JSON.parse(readFileSync(`sample-data/${name}/job.json`, "utf8"));
const sheetOf = (job: Job, more: Partial<SheetOptions> = {}) => {
  const sheet = sheetModel(job, job.machines[0]?.id ?? "", { ...options, ...more });
  const at = (mark: string) => {
    const found = sheet.rows.find((one) => one.mark === mark);
    if (!found) throw new Error(`no row ${mark}`);
    return found;
  };
  return { sheet, at };
};
const readingsOf = (job: Job) => {
  const [machine] = job.machines;
  if (!machine) throw new Error("no machine");
  return machine.readings;
};

test("only a reading that shows something present confirms, and what else differs is named", () => {
  const { at } = sheetOf(sample("sweeper"));
  // R2: a test lamp burns at 24.6 V; R11: plugged in only 11.7 V reach the module.
  expect(at("1")).toMatchObject({
    proved: true,
    faulty: false,
    evidence: "24.60 V, as expected, 16 Sep",
    evidenceBesides: ["! 11.70 V to A1 pin 4, S1 at run, A1 plugged in: not as expected"],
  });
  // R3: open-circuit volts come through one strand and prove nothing.
  expect(at("2")).toMatchObject({ proved: false, faulty: false });
});

test("a cavity's evidence is its own reading, beside what should be read in the same way", () => {
  const { at } = sheetOf(sample("sweeper"));
  // R6, cavity 4 to chassis; the newer R11 lies between pins 1 and 4 with the module plugged in.
  expect(at("4")).toMatchObject({
    proved: false,
    faulty: true,
    expectedSetup: ["to chassis", "A1 unplugged", "battery off"],
    evidence: "22.4 Ω, not as expected, 16 Sep",
    evidenceSetup: ["to chassis", "Q1 at off", "A1 unplugged"],
    evidenceBesides: [
      "! 11.70 V from A1 pin 1, S1 at run, A1 plugged in: not as expected",
      "and 1 more",
    ],
  });
  expect(at("4").expected).toMatch(/ Ω$/);
  // R3 is taken without a lamp, so what a lamp would show is not put beside it.
  expect(at("2").expectedSetup).toEqual([
    "to chassis",
    "S1 at run",
    "S2 at pressed",
    "A1 unplugged",
  ]);
});

test("wherever value and evidence differ in kind, the evidence says what it should read", () => {
  for (const name of ["sweeper", "trailer-iso-12098"]) {
    const { sheet } = sheetOf(sample(name));
    for (const one of sheet.rows.filter((row) => row.evidenceSetup.length > 0)) {
      const place = one.evidenceSetup[0] ?? "";
      expect(place).toMatch(/^(to|from) /);
      const isSaid = one.evidenceSetup.some((phrase) => phrase.startsWith("should read"));
      expect([one.mark, isSaid]).toEqual([one.mark, !one.expectedSetup.includes(place)]);
    }
  }
});

test("only a reading between two pins is shown with what it should read, when there is no other", () => {
  const job = sample("sweeper");
  const readings = readingsOf(job);
  readings.splice(0, readings.length, ...readings.filter((one) => one.id === "R11"));
  const { sheet, at } = sheetOf(job);
  expect(at("4").evidence).toBe("11.70 V, not as expected, 16 Sep");
  expect(at("4").evidenceSetup.slice(0, -1)).toEqual([
    "from A1 pin 1",
    "S1 at run",
    "A1 plugged in",
  ]);
  expect(at("4").evidenceSetup.at(-1)).toMatch(/^should read .* V$/);
  expect(at("4").expectedSetup[0]).toBe("from battery +");
  // The row itself says the contrary, so the note may stand.
  expect(sheet.sharedSetup).toEqual(["A1 unplugged"]);
});

test("a condition is said once for all only where what was measured shares it", () => {
  const job = sample("trailer-iso-12098");
  const shared = () => sheetOf(job, { plug: "X2" }).sheet.sharedSetup;
  expect(shared()).toEqual(["test lamp as load", "A2 unplugged"]);
  readingsOf(job).push({
    id: "R9",
    quantity: "volts",
    red: "X2:1",
    black: "X2:3",
    value: 25,
    when: { unplugged: ["A2"] },
  });
  expect(shared()).toEqual(["A2 unplugged"]);
});

test("a reading that fits two roles confirms neither", () => {
  const { sheet, at } = sheetOf(sample("trailer-iso-12098"));
  expect(at("4")).toMatchObject({
    verdict: "undecided",
    proved: false,
    evidence: "0.10 Ω, fits a ground or an input, 2 Oct",
  });
  expect(sheet.standing).toContain("0 confirmed by a reading, 15 not; 2 undecided");
});

test("what is found on the line of a cavity is on the sheet, with the cavities it concerns", () => {
  const { sheet } = sheetOf(sample("sweeper"));
  // R9: 13 V from splice SP2 to chassis, on the ground of cavities 4 and 5.
  const onLine = sheet.warnings.find((one) => one.message.startsWith("Voltage drop from SP2:1"));
  expect(onLine?.marks).toBe("4, 5");
  expect(sheet.unshown).toEqual({ notes: 0, elsewhere: 0 });
});

test("another module at the far end of a line keeps its findings to itself, counted", () => {
  const job = sample("trailer-iso-12098");
  const { sheet } = sheetOf(job);
  expect(sheet.unshown).toEqual({ notes: 2, elsewhere: 0 });
  expect(sheetOf(job, { plug: "X2" }).sheet.unshown).toEqual({ notes: 0, elsewhere: 2 });
  expect(model().unshown).toEqual({ notes: 0, elsewhere: 1 });
});
