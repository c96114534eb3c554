import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { checkJob, createChecker } from "../../src/check/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job, type Versioned } from "../../src/job/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { fourWays, measuredAs, ohms, volts } from "../support/four-way-plug.ts";
import { mislaidJob } from "../support/mislaid-job.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261126);

const RULE = "cavities-swapped";
const CERTAIN = [RULE, "face-mirrored", "row-off-by-one"];

testExamplesOfPage(RULE);

const exchanged = [volts("1", 0.01), volts("3", 25.1), volts("2", 0.01), ohms("4", 20.3)];

test("says which two, how much agrees, and offers to exchange them", () => {
  const [found] = findingsOf(RULE, measuredAs(exchanged, { "1": "YE", "3": "RD", "4": "BU" }));
  expect(found?.subjects).toEqual(["X1:1", "X1:3", "V1", "V3"]);
  expect(found?.message).toMatch(
    /cavities 1 and 3 of plug X1 are exchanged \(4 readings and 3 colours agree; as drawn 2 readings and 2 colours do not\)/,
  );
  const moves = [
    { from: "1", to: "3" },
    { from: "3", to: "1" },
  ];
  expect(found?.corrections).toEqual([
    { does: "exchange-cavities", plug: "X1", a: "1", b: "3" },
    { does: "move-notes", plug: "X1", moves },
  ]);
});

test("nothing is left to say once what is tied to the two is exchanged", () => {
  const job = measuredAs(exchanged);
  const other = { "X1:1": "X1:3", "X1:3": "X1:1" } as Record<string, string>;
  for (const link of job.links) link.cavity = other[link.cavity] ?? link.cavity;
  expect(findingsOf(RULE, job)).toEqual([]);
  expect(findingsOf("mislaid-undecided", job)).toEqual([]);
});

test("absence alone is a fault, whatever else would explain it", () => {
  expect(findingsOf(RULE, measuredAs([volts("1", 0), volts("2", 0), ohms("3", "OL")]))).toEqual([]);
});

test("one fault that gives all of it is no exchange: the feed's wire rubs through on the lamp's", () => {
  expect(findingsOf(RULE, measuredAs([volts("3", 25.1), volts("1", 25.1)]))).toEqual([]);
});

test("one reading that it cannot give, and it is none", () => {
  expect(findingsOf(RULE, measuredAs([...exchanged, ohms("3", 7)]))).toEqual([]);
});

test("colours that say otherwise take the certainty away", () => {
  const job = measuredAs(exchanged, { "1": "RD", "3": "YE" });
  expect(findingsOf(RULE, job)).toEqual([]);
  expect(findingsOf("mislaid-undecided", job)).toHaveLength(1);
});

test("with the module plugged in, its pins get each other's wire", () => {
  const circuit = fourWays();
  const module = circuit.job.diagram.parts.find(({ id }) => id === "A1");
  // from pin 3 through the module to the valve at pin 4
  const behaviour = { paths: [], loads: [{ between: ["3", "4"], ohms: 20 }] };
  Object.assign(module ?? {}, { behaviour });
  // the feed comes in at pin 3: half of it is left for the valve
  const plugged = { ...volts("4", 12.6), id: "in", when: {} };
  const [found] = findingsOf(RULE, measuredAs([...exchanged, plugged], {}, circuit));
  expect(found?.message).toMatch(/cavities 1 and 3 .*5 readings agree; .* exchange the two wires/);
  // what is tied to them is right then: exchanging it would leave the valve unexplained
  expect(found?.corrections).toBeUndefined();
  // at the valve itself: it must get the half of it too, and is not dead as drawn
  const atValve = (value: number) => ({ ...plugged, id: "valve", red: "Y1:1", value });
  const told = (value: number) =>
    findingsOf(RULE, measuredAs([...exchanged, plugged, atValve(value)], {}, circuit));
  expect(told(12.6)).toHaveLength(1);
  expect(told(0)).toEqual([]);
});

test("edit by edit it says what a fresh check says, and stays the same object while nothing of it changes", () => {
  const id = "M1";
  const start = measuredAs(exchanged, { "1": "YE", "3": "RD" });
  const machine = start.machines[0]?.id ?? id;
  const checker = createChecker(machine);
  let now: Versioned = { job: start, history: EMPTY_HISTORY };
  const edits: ((draft: Job) => void)[] = [
    (draft) => {
      draft.title = "Another";
    },
    (draft) => {
      draft.machines[0]?.wires.pop();
    },
    (draft) => {
      draft.machines[0]?.readings.pop();
    },
    (draft) => {
      const wire = draft.diagram.wires.find(({ to }) => to === "A1:1");
      if (wire) wire.colour = { base: "WH" };
    },
    (draft) => {
      for (const link of draft.links)
        link.cavity = { "X1:1": "X1:3", "X1:3": "X1:1" }[link.cavity] ?? link.cavity;
    },
  ];
  let before = checker.check(now.job).findings.find(({ rule }) => rule === RULE);
  expect(before).toBeDefined();
  for (const [index, edit] of edits.entries()) {
    now = applyEdit(now, "Edit", edit);
    const found = checker.check(now.job).findings;
    expect(found).toEqual(checkJob(JSON.parse(JSON.stringify(now.job)), machine).findings);
    const own = found.find(({ rule }) => rule === RULE);
    if (index === 0) expect(own).toBe(before);
    before = own;
  }
  expect(before).toBeUndefined();
});

const told = (job: Job) =>
  checkJob(job, "M1").findings.filter(({ rule }) => CERTAIN.includes(rule));

test("two wires exchanged on a true machine: told, or not told, but never anything else", () => {
  let found = 0;
  for (let n = 0; n < 22; n++) {
    const { job, did } = mislaidJob(seededRandom(SEED + n), "exchanged", 14);
    if (did.is !== "exchanged") throw new Error("made otherwise");
    for (const one of told(job)) {
      found++;
      expect(one.rule, `seed ${SEED + n}: ${one.message}`).toBe(RULE);
      const marks = one.subjects.slice(0, 2).map((ref) => ref.slice(ref.indexOf(":") + 1));
      expect(marks.toSorted(), `seed ${SEED + n}`).toEqual(did.marks.toSorted());
    }
  }
  expect(found).toBeGreaterThan(0);
}, 120_000);

test("a machine that is right, or has one fault, is none of them", () => {
  for (let n = 0; n < 30; n++) {
    for (const is of ["fault", "nothing"] as const) {
      const { job, did } = mislaidJob(seededRandom(SEED + n), is, 14);
      expect(told(job), `seed ${SEED + n} ${JSON.stringify(did)}`).toEqual([]);
    }
  }
}, 120_000);
