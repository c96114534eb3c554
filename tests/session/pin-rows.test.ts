import { expect, test } from "vitest";
import { pinRows, setPrinted } from "../../src/session/index.ts";
import { eightWayCheck, eightWayJob } from "../sheet/fixtures.ts";

const rows = (change: (job: ReturnType<typeof eightWayJob>) => void = () => {}) => {
  const job = eightWayJob();
  change(job);
  return pinRows(job, "M1", "X1", eightWayCheck());
};

test("one row a cavity, then the pins that have none", () => {
  const list = rows((job) => {
    job.links = job.links.filter((link) => link.pin !== "A1:6");
  });
  expect(list.map((row) => [row.mark, row.state, row.pins.join()])).toEqual([
    ["1", "wired", "A1:1"],
    ["2", "wired", "A1:2"],
    ["3", "wired", "A1:3"],
    ["4", "wired", "A1:4"],
    ["5", "wired", "A1:5"],
    ["6", "untied", ""],
    ["7", "empty", ""],
    ["8", "blocked", ""],
    ["", "no-cavity", "A1:6"],
  ]);
  expect(list.at(-1)).toMatchObject({ ref: "A1:6", cavity: null, printed: "LAMP" });
});

test("printed, circuit, verdict and wire stand side by side", () => {
  expect(rows()[3]).toMatchObject({
    ref: "X1:4",
    printed: "OUT",
    circuit: "ground",
    verdict: "contradicted",
    meterVerdict: "unproven",
  });
  expect(rows()[4]).toMatchObject({
    colour: { onMachine: { base: "YE", tracer: "RD" }, onDiagram: { base: "YE" } },
    colourDiffers: true,
    numberDiffers: false,
  });
});

test("two cavities with one mark keep rows of their own", () => {
  const list = rows((job) => {
    const cavity = job.plugs[0]?.cavities[1];
    if (cavity) cavity.mark = "1";
  });
  expect(new Set(list.map((row) => row.key)).size).toBe(list.length);
});

test("without a plug every module pin is a row", () => {
  const job = eightWayJob();
  job.plugs = [];
  job.links = [];
  const list = pinRows(job, "M1", null, eightWayCheck());
  expect(list.map((row) => row.ref)).toEqual(["A1:1", "A1:2", "A1:3", "A1:4", "A1:5", "A1:6"]);
});

test("the printed word of a pin is set and taken away", () => {
  const job = eightWayJob();
  const printedAt4 = () => {
    const module = job.diagram.parts.find((part) => part.kind === "module");
    return module?.kind === "module" ? module.pins[3] : undefined;
  };
  setPrinted(job, "A1:4", "GND");
  expect(printedAt4()).toEqual({ id: "4", printed: "GND" });
  setPrinted(job, "A1:4", "");
  expect(printedAt4()).toEqual({ id: "4" });
});

test("the reading that speaks of the cavity itself comes first, whatever is newer", () => {
  const [row] = rows((job) => {
    const readings = job.machines[0]?.readings;
    const [first] = readings ?? [];
    if (!readings || !first) throw new Error("no reading");
    first.when = { unplugged: ["A1"] };
    readings.push({ ...first, id: "R3", black: "X1:4", value: 3 });
    readings.push({ ...first, id: "R4", red: "A1:1", value: 3, when: {} });
  });
  expect(row?.evidence.map((one) => [one.reading.id, one.reach, one.between])).toEqual([
    ["R4", "fixed", "to chassis"],
    ["R3", "between", "to cavity 4"],
    ["R1", "harness", "to chassis"],
  ]);
  expect(row?.chief?.reading.id).toBe("R1");
});
