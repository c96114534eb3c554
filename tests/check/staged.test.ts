/**
 * A check in two parts: everything but the readings at once, the readings afterwards, step by step,
 * whatever edit comes in between. Held against a check of a fresh copy.
 */
import { expect, test, vi } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import {
  type CheckedSoFar,
  checkJob,
  createChecker,
  type Finding,
  isLookedAtAgain,
} from "../../src/check/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job, type Versioned } from "../../src/job/index.ts";
import { pluggedBigJob } from "../support/plugged-big-job.ts";
import { randomEdit } from "../support/random-edit.ts";
import { randomJob } from "../support/random-job.ts";
import { wiringEdit } from "../support/wiring-edit.ts";

vi.setConfig({ testTimeout: 120_000 });

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20250917);

const fresh = (job: Job): Job => JSON.parse(JSON.stringify(job));
const begun = (job: Job): Versioned =>
  applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  });

/** Rules whose findings follow from readings. */
const byReadings = ({ rule }: Finding): boolean =>
  isLookedAtAgain({ rule, severity: "note", subjects: ["R"], message: "" }, ["R"]);

const saysOf = (findings: readonly Finding[]) => findings.map((one) => JSON.stringify(one));

/** What holds of every answer on the way, `before` being the findings of the last answer to be whole. */
function expectHonest(
  { result, again }: CheckedSoFar,
  whole: readonly Finding[],
  before: ReadonlySet<string>,
  where: string,
) {
  const wanted = saysOf(whole);
  const now = result.findings;
  // what no reading says is said at once, as it is
  expect(saysOf(now.filter((one) => !byReadings(one))), where).toEqual(
    saysOf(whole.filter((one) => !byReadings(one))),
  );
  // nothing that is not of this job is shown as if it were
  for (const one of now)
    if (!isLookedAtAgain(one, again)) expect(wanted, where).toContain(JSON.stringify(one));
  // nothing vanishes that comes back
  const said = new Set(saysOf(now));
  for (const one of wanted) if (before.has(one)) expect(said, where).toContain(one);
}

function follow(seed: number, job: Job, edits: number, edit: typeof randomEdit, steps: number) {
  const random = seededRandom(seed);
  const [{ id } = { id: "" }] = job.machines;
  const checker = createChecker(id);
  let now = begun(job);
  let before: ReadonlySet<string> = new Set();
  const seen = { again: 0, interrupted: 0, whole: 0 };
  for (let n = 0; n < edits; n++) {
    const { label, change } = edit(random);
    now = applyEdit(now, label, change);
    const where = `seed ${seed}, edit ${n}: ${label}`;
    const whole = checkJob(fresh(now.job), id);
    const ids = new Set(now.job.machines[0]?.readings.map((one) => one.id));
    const readingsIn = ({ again }: CheckedSoFar) => again.filter((one) => ids.has(one)).length;
    let last = checker.begin(now.job);
    if (last.again.length > 0) seen.again++;
    expectHonest(last, whole.findings, before, where);
    // now and then the next edit comes before the readings are done with
    let left = random.chance(0.5) ? random.below(steps) : Number.POSITIVE_INFINITY;
    let taken = 0;
    while (last.again.length > 0 && left-- > 0) {
      expect(taken++, where).toBeLessThan(1000);
      const news = checker.goOn();
      if (!news) continue;
      // more is known with every answer; a plug is doubted only once its readings are judged
      expect(readingsIn(news), where).toBeLessThanOrEqual(readingsIn(last));
      last = news;
      expectHonest(last, whole.findings, before, where);
    }
    if (last.again.length > 0) {
      seen.interrupted++;
      before = new Set([...before].filter((one) => saysOf(last.result.findings).includes(one)));
      continue;
    }
    seen.whole++;
    expect(checker.goOn(), where).toBeNull();
    expect(last.result, where).toEqual(whole);
    before = new Set(saysOf(whole.findings));
  }
  return seen;
}

const seeds = (count: number, first: number) =>
  Array.from({ length: count }, (_, index) => SEED + first + index);

const eitherEdit = (random: Random) =>
  random.chance(0.5) ? randomEdit(random) : wiringEdit(random);

test("in the end it says what a check of all at once says, and nothing else on the way there", () => {
  const sum = { again: 0, interrupted: 0, whole: 0 };
  for (const seed of seeds(20, 0)) {
    const job = randomJob(seededRandom(seed), { parts: 14, wires: 18, plugs: 2, machines: 1 });
    const seen = follow(seed, job, 12, eitherEdit, 6);
    for (const name of ["again", "interrupted", "whole"] as const) sum[name] += seen[name];
  }
  expect(sum.again).toBeGreaterThan(50);
  expect(sum.interrupted).toBeGreaterThan(10);
  expect(sum.whole).toBeGreaterThan(50);
});

test("on a large machine with readings that fit and some that don't", () => {
  for (const seed of seeds(2, 1000)) {
    const seen = follow(seed, pluggedBigJob(400, 4, 2), 6, wiringEdit, 12);
    expect(seen.again).toBeGreaterThan(0);
  }
});

test("a whole check in between leaves nothing to be gone on with", () => {
  const { job } = begun(pluggedBigJob(200, 2, 1));
  const checker = createChecker("machine1");
  const first = checker.begin(job);
  expect(first.again).toHaveLength(8);
  const whole = checker.check(job);
  expect(checker.goOn()).toBeNull();
  expect(checker.begin(job)).toEqual({ result: whole, again: [] });
});

test("an edit that moves no reading leaves none to be looked at again", () => {
  const checker = createChecker("machine1");
  let now = begun(pluggedBigJob(200, 2, 1));
  checker.check(now.job);
  now = applyEdit(now, "Move", (draft) => {
    for (const part of draft.diagram.parts) part.at[0] += 1;
  });
  expect(checker.begin(now.job).again).toEqual([]);
});

test("what was said of a reading and is said again stays the same object", () => {
  const checker = createChecker("machine1");
  let now = begun(pluggedBigJob(200, 2, 2));
  const before = checker.check(now.job).findings.filter(byReadings);
  expect(before.length).toBeGreaterThan(0);
  now = applyEdit(now, "Draw", (draft) => {
    draft.diagram.wires.push({ id: "NEW", from: "E1:1", to: "E1:1" });
  });
  let last = checker.begin(now.job);
  expect(last.again.length).toBeGreaterThan(0);
  expect(last.result.findings.filter(byReadings)).toEqual(before);
  for (let n = 0; last.again.length > 0 && n < 1000; n++) last = checker.goOn() ?? last;
  const after = last.result.findings.filter(byReadings);
  expect(after.filter(({ rule }) => rule === "reading-unexpected")).toHaveLength(
    before.filter(({ rule }) => rule === "reading-unexpected").length,
  );
  for (const one of before.filter(({ rule }) => rule === "reading-unexpected"))
    expect(after.some((other) => other === one)).toBe(true);
});

test("what was said of a reading stands while it is judged with another note", () => {
  const checker = createChecker("machine1");
  let now = begun(pluggedBigJob(200, 2, 2));
  const before = checker.check(now.job).findings.filter(byReadings);
  const odd = before.find(({ rule }) => rule === "reading-unexpected");
  now = applyEdit(now, "Note", (draft) => {
    const reading = draft.machines[0]?.readings.find(({ id }) => id === odd?.subjects[0]);
    if (reading) reading.note = "wet";
  });
  let last = checker.begin(now.job);
  expect(last.again).toEqual([odd?.subjects[0]]);
  expect(last.result.findings.filter(byReadings)).toEqual(before);
  for (let n = 0; last.again.length > 0 && n < 1000; n++) last = checker.goOn() ?? last;
  expect(last.again).toEqual([]);
  expect(last.result).toEqual(checkJob(fresh(now.job), "machine1"));
});
