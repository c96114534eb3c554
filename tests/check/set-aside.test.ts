import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { checkJob, createChecker, type Finding } from "../../src/check/index.ts";
import {
  applyEdit,
  EMPTY_HISTORY,
  type Job,
  type SetAside,
  type Versioned,
} from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";
import { lampModule, matched, onMachine, reading } from "../support/check-example.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { wiringEdit } from "../support/wiring-edit.ts";

const entryOf = (
  { rule, subjects, message, because }: Finding,
  more: Partial<SetAside> = {},
): SetAside => ({
  rule,
  subjects: [...subjects],
  message,
  ...(because ? { because: [...because] } : {}),
  reason: "seen",
  ...more,
});

const check = (job: Job) => checkJob(job, "machine1");
const wrong = () => lampModule({ "1": "GND" }).job;
const first = (job: Job): Finding => {
  const [found] = check(job).findings;
  if (!found) throw new Error("nothing found");
  return found;
};

test("what is set aside is still told, with the reason, and counts for nothing", () => {
  const job = wrong();
  const { findings, summary } = check({ ...job, setAside: [entryOf(first(job))] });
  expect(findings).toEqual([{ ...first(job), setAside: "seen" }]);
  expect(summary).toEqual({ contradictions: 0, warnings: 0, notes: 0 });
});

test.each([
  ["its message", { message: "something else" }],
  ["its path", { because: ["W1"] }],
])("on other grounds, %s, it counts, and the reason given before is told", (_, change) => {
  const job = wrong();
  const { findings, summary } = check({ ...job, setAside: [entryOf(first(job), change)] });
  expect(findings).toEqual([{ ...first(job), setAsideBefore: "seen" }]);
  expect(summary.contradictions).toBe(1);
});

test("entries about nothing, or for another machine, do no harm", () => {
  const job = wrong();
  const setAside = [
    entryOf(first(job), { machine: "another" }),
    entryOf(first(job), { rule: "no-such-rule" }),
    entryOf(first(job), { subjects: [] }),
    entryOf(first(job), { subjects: ["A1:1", "X9:9"] }),
  ];
  expect(check({ ...job, setAside })).toEqual(check(job));
});

test("what was said of one of two findings about the same things is no word on the other", () => {
  const circuit = lampModule().contact("S1", "operator").contact("S2", "operator");
  // Two ways from the battery to the same ground, each through a switch of its own.
  const { job } = circuit.wire("G1:+ S1:1", "S1:2 GND2:1", "G1:+ S2:1", "S2:2 GND2:1");
  const shorts = check(job).findings.filter(({ rule }) => rule === "dead-short");
  const [one, other] = shorts;
  if (!one || !other) throw new Error("two shorts are needed");
  expect(one.subjects).toEqual(other.subjects);
  expect(one.message).not.toBe(other.message);
  const after = check({ ...job, setAside: [entryOf(one)] }).findings.filter(
    ({ rule }) => rule === "dead-short",
  );
  expect(after).toEqual(
    shorts.map((short) => (short === one ? { ...short, setAside: "seen" } : short)),
  );
});

test("a finding stays the same object while neither it nor its mark changes", () => {
  const checker = createChecker("machine1");
  let now: Versioned = { job: bigJob(200), history: EMPTY_HISTORY };
  const edit = (change: (draft: Job) => void) => {
    now = applyEdit(now, "Edit", change);
    return checker.check(now.job);
  };
  const before = edit((draft) => {
    draft.title += "!";
  });
  const [aside, ...others] = before.findings;
  if (!aside) throw new Error("nothing found");
  const marked = edit((draft) => {
    draft.setAside = [entryOf(aside)];
  });
  expect(marked.findings.filter((one) => others.includes(one))).toHaveLength(others.length);
  const again = edit((draft) => {
    draft.title += "?";
  });
  expect(again).toBe(marked);
  const back = edit((draft) => {
    delete draft.setAside;
  });
  expect(back.findings).toEqual(before.findings);
  expect(back.findings[0]).toBe(aside);
});

test("after each of many edits, findings set aside and roles adopted are as in a fresh check", () => {
  for (let seed = 7000; seed < 7008; seed++) {
    const random = seededRandom(seed);
    const checker = createChecker("machine1");
    let now: Versioned = applyEdit(
      { job: randomCircuit(seededRandom(seed)), history: EMPTY_HISTORY },
      "Freeze",
      (draft) => {
        draft.title += "!";
      },
    );
    for (let n = 0; n < 25; n++) {
      const found = checker.check(now.job);
      const fresh: Job = JSON.parse(JSON.stringify(now.job));
      expect(found, `seed ${seed}, edit ${n}`).toEqual(check(fresh));
      const [one] = found.findings.length > 0 ? [random.pick([...found.findings])] : [];
      const { label, change } = wiringEdit(random);
      now = applyEdit(now, label, (draft) => {
        const roles = found.roles.length > 0 ? [random.pick([...found.roles])] : [];
        const kind = random.below(4);
        if (kind > 1) change(draft);
        else if (kind === 1) {
          const machine = random.chance(0.3) ? { machine: "machine1" } : {};
          const fresh = roles.map(({ pin, fits }) => ({
            pin,
            role: random.pick(["ground", "output", ...fits] as const),
            ...machine,
          }));
          draft.adopted = [...(draft.adopted ?? []), ...fresh].slice(-5);
        } else if (one) draft.setAside = [...(draft.setAside ?? []), entryOf(one)].slice(-6);
      });
    }
  }
});

test("readings' findings are set aside with their path", () => {
  const job = onMachine(matched(lampModule()), { readings: [reading("R1", 3)] });
  const found = check(job).findings.find(({ rule }) => rule === "reading-unexpected");
  expect(found?.because).toEqual(["W3", "F1", "W2", "G1"]);
  const plugged = onMachine(matched(lampModule()), {
    readings: [reading("R1", 3, { red: "A1:1", when: {} })],
  });
  const there = check(plugged).findings.find(({ rule }) => rule === "reading-unexpected");
  expect(there?.because).toEqual(["W3", "F1", "W2", "G1"]);
});
