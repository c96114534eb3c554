import { expect, test } from "vitest";
import type { Job, When } from "../../../src/job/index.ts";
import { type TrialOutcome, trialOutcome } from "../../../src/readings/index.ts";
import {
  aheadInWords,
  besideCircuit,
  besideInWords,
  createSession,
  doneInWords,
  dropTrial,
  keepTrial,
  newTrial,
  operablesOf,
  setSwitch,
  toLookAt,
  trialAgain,
  trialLacks,
  trialOf,
  withSeen,
} from "../../../src/session/index.ts";
import { withBattery } from "../../support/circuit-builder.ts";

/** A key, a button behind it, a relay and its motor; a lamp that is always on; one that never is. */
function machine(): Job {
  const { job } = withBattery(12)
    .key("S1")
    .contact("S2", "operator")
    .part("relay", "K1", { label: "pump relay" })
    .part("motor", "M1")
    .part("lamp", "P1")
    .part("lamp", "P2")
    .wire("G1:+ S1:30", "S1:15 S2:1", "S2:2 K1:86", "K1:85 GND1:1")
    .wire("G1:+ K1:30", "K1:87 M1:1", "M1:2 GND1:1", "G1:+ P1:1", "P1:2 GND1:1")
    .wire("P2:1 GND1:1");
  return job;
}
const ID = "machine1";
const RUN: When = { switches: { S1: "run", S2: "worked" } };
const asked = (job: Job, when: When) => trialOutcome(job, ID, when);

test("nothing is kept before something was seen or noted", () => {
  const job = machine();
  const begun = { ...newTrial(ID), when: RUN };
  expect(trialLacks(begun)).toMatch(/what was seen/);
  expect(trialOf(begun, job)).toBeNull();
  expect(trialOf({ ...begun, note: " no click " }, job)).toEqual({
    id: "T1",
    when: RUN,
    saw: [],
    note: "no click",
  });
});

test("what nobody looked at is not in what was seen", () => {
  const on = withSeen(withSeen(newTrial(ID), "M1", "off"), "P1", "on");
  const draft = withSeen(on, "P1", null);
  expect(trialOf(draft, machine())?.saw).toEqual([{ part: "M1", state: "off" }]);
});

test("states at rest are left out, and the switches stay in the order of the doing", () => {
  const first = setSwitch({ engine: "off", unplugged: [] }, "S2", "worked", "rest");
  const when = setSwitch(first, "S1", "run", "off");
  const kept = trialOf({ ...newTrial(ID), when, note: "x" }, machine());
  expect(kept?.when).toEqual({ switches: { S2: "worked", S1: "run" } });
  expect(doneInWords(when).filter((one) => one.startsWith("S"))).toEqual([
    "S2 to worked",
    "S1 to run",
  ]);
});

test("keeping, mending and deleting are one undo step each", () => {
  const session = createSession("one", machine());
  const trials = () => session.get().job.machines[0]?.trials ?? [];
  const keep = (draft: ReturnType<typeof newTrial>) => {
    const made = trialOf(draft, session.get().job);
    if (made) session.edit("Keep", (job) => keepTrial(job, ID, made));
  };
  keep({ ...withSeen(newTrial(ID), "M1", "off"), when: RUN, note: "no click" });
  keep(withSeen(newTrial(ID), "P1", "on"));
  expect(trials().map(({ id }) => id)).toEqual(["T1", "T2"]);
  const [first] = trials();
  if (!first) throw new Error("nothing kept");
  keep({ ...withSeen(trialAgain(ID, first, true), "M1", "on"), note: "" });
  expect(trials()[0]).toEqual({ id: "T1", when: RUN, saw: [{ part: "M1", state: "on" }] });
  session.edit("Delete", (job) => dropTrial(job, ID, "T1"));
  expect(trials().map(({ id }) => id)).toEqual(["T2"]);
  session.undo();
  session.undo();
  expect(trials()[0]).toEqual(first);
  session.undo();
  expect(trials().map(({ id }) => id)).toEqual(["T1"]);
});

test("a trial done again has its state, and nothing seen yet", () => {
  const stored = { id: "T1", when: RUN, saw: [{ part: "M1", state: "off" as const }], note: "n" };
  expect(trialAgain(ID, stored, false)).toEqual({ ...newTrial(ID), when: RUN });
});

test("what is seen stands beside what the circuit does, and neither is called wrong", () => {
  const job = machine();
  const saw = [
    { part: "M1", state: "off" },
    { part: "P1", state: "on" },
    { part: "P2", state: "off" },
    { part: "M9", state: "on" },
  ] as const;
  const rows = besideCircuit(job, ID, { saw: [...saw] }, asked(job, RUN));
  expect(rows.map(({ part, verdict }) => [part, verdict])).toEqual([
    ["M1", "differs"],
    ["P1", "agrees"],
    ["P2", "agrees"],
    ["M9", "open"],
  ]);
  const { byId } = operablesOf(job, ID);
  expect(rows.map((row) => besideInWords(row, byId.get(row.part)))).toEqual([
    "The circuit as drawn has M1 running; it was still.",
    "P1 was lit, as drawn.",
    "P2 was dark, as drawn.",
    "M9 was on; it is not on this machine any more.",
  ]);
});

test("where the circuit can't tell, nothing agrees or differs", () => {
  const job = machine();
  const told = asked(job, RUN);
  const verdict = (more: Partial<TrialOutcome>, state: "on" | "off") =>
    besideCircuit(job, ID, { saw: [{ part: "M1", state }] }, { ...told, ...more })[0]?.verdict;
  for (const state of ["on", "off"] as const) {
    expect(verdict({ states: { M1: "unknown" } }, state)).toBe("open");
    expect(verdict({ states: { M1: "changes" } }, state)).toBe("open");
    expect(verdict({ timed: true }, state)).toBe("open");
    expect(verdict({ refused: "no" }, state)).toBe("open");
    // it came on only on the way, or may have: "off" is then no more than the last word
    expect(verdict({ states: {} }, state)).toBe("open");
    expect(verdict({ states: {}, brings: [], may: ["M1"] }, state)).toBe("open");
  }
});

test("what should come on is asked for first", () => {
  const job = machine();
  const { first, others } = toLookAt(job, ID, asked(job, RUN));
  expect(first.map(({ id }) => id)).toEqual(["K1", "M1", "P1"]);
  expect(others.map(({ id }) => id)).toEqual(["P2"]);
  expect(toLookAt(job, ID, null).others).toHaveLength(4);
});

test("what will move is told in words before it is done, and nothing where nothing moves", () => {
  const job = machine();
  const { byId } = operablesOf(job, ID);
  expect(aheadInWords(asked(job, RUN), byId)).toEqual([
    {
      how: "will",
      lead: "Will move or come on",
      names: ["relay K1 pump relay", "motor M1"],
    },
  ]);
  expect(aheadInWords(asked(job, {}), byId)).toEqual([]);
});
