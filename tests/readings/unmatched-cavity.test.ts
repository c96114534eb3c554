import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { createPlay } from "../../src/circuit/index.ts";
import { type Job, type Reading, readJobText } from "../../src/job/index.ts";
import { predict } from "../../src/readings/index.ts";
import { readoutOf } from "../../src/session/index.ts";

const MACHINE = "sweeper14";
const dead = { switches: { S1: "off", Q1: "off" }, unplugged: ["A1"] };
const ohms: Reading = {
  id: "R1",
  quantity: "ohms",
  red: "X1:6",
  black: "chassis",
  value: 0.3,
  when: dead,
};

/** The sweeper with one reading, at a cavity that no pin is matched to. */
function untied(reading: Reading): Job {
  const read = readJobText(readFileSync("sample-data/sweeper/job.json", "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { machines, links, ...rest } = read.value;
  return {
    ...rest,
    links: links.filter(({ cavity }) => cavity !== "X1:6"),
    machines: machines.map((one) => (one.id === MACHINE ? { ...one, readings: [reading] } : one)),
  };
}

test("of a cavity that no pin is matched to nothing is expected, and nothing there is a fault", () => {
  const volts: Reading = { ...ohms, quantity: "volts", value: 24.5, with: "test-lamp", when: {} };
  for (const reading of [ohms, { ...volts, when: { unplugged: ["A1"] } }]) {
    const job = untied(reading);
    const found = predict(job, MACHINE, reading);
    expect(found.predicted).toBeNull();
    expect(found.floating).toBe(false);
    expect(found.uncertain).toMatch(/^No pin is matched to cavity 6/);
    const rules = checkJob(job, MACHINE).findings.map(({ rule }) => rule);
    expect(rules.filter((rule) => rule.startsWith("reading-"))).toEqual([]);
  }
});

test("one that is marked as empty joins nothing", () => {
  const job = untied(ohms);
  const plugs = job.plugs.map((plug) => ({
    ...plug,
    cavities: plug.cavities.map((one) => (one.mark === "6" ? { ...one, empty: true } : one)),
  }));
  expect(predict({ ...job, plugs }, MACHINE, ohms).predicted).toBe("OL");
});

test("ohms on a live circuit stay refused there", () => {
  const live = { ...ohms, red: "X1:1", black: "X1:6", when: { switches: { S1: "run" } } };
  expect(predict(untied(ohms), MACHINE, live).invalid).not.toBeNull();
});

test("while the drawing is operated it is not told as floating", () => {
  const job = untied(ohms);
  const live = createPlay(job, MACHINE).state();
  expect(live.cavities["X1:5"]).toBeDefined();
  expect(live.cavities["X1:6"]).toBeUndefined();
  const told = readoutOf(job, MACHINE, live, "X1:6");
  expect(told?.line).toBeNull();
  expect(told?.says.join()).toMatch(/no pin is matched/);
});
