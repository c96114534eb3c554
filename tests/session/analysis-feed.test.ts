import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job, type Versioned } from "../../src/job/index.ts";
import { changesFrom, fromRuns, runsFrom, withChanges } from "../../src/session/analysis-feed.ts";
import { bigJob } from "../support/big-job.ts";
import { randomEdit } from "../support/random-edit.ts";
import { randomJob } from "../support/random-job.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 40417);

/** What a message looks like on the far side: a copy that shares nothing. */
const sent = <T>(message: T): T => structuredClone(message);

test("the far side has the same job after every edit", () => {
  for (let seed = SEED; seed < SEED + 40; seed++) {
    const random = seededRandom(seed);
    let near: Versioned = { job: randomJob(random), history: EMPTY_HISTORY };
    let far = sent(near.job);
    for (let n = 0; n < 25; n++) {
      const { label, change } = randomEdit(random);
      const next = applyEdit(near, label, change);
      far = withChanges(far, sent(changesFrom(near.job, next.job)));
      near = next;
      expect(far, `seed ${seed}, edit ${n}: ${label}`).toEqual(near.job);
    }
  }
});

test("what did not change is the same object on the far side, and not sent", () => {
  const near = bigJob(400);
  const far = sent(near);
  const { job } = applyEdit({ job: near, history: EMPTY_HISTORY }, "Draw", (draft) => {
    draft.diagram.wires.splice(7, 0, { id: "new", from: "G1:+", to: "E1:1" });
    const [part] = draft.diagram.parts;
    if (part) part.at = [1, 2];
  });
  const changes = sent(changesFrom(near, job));
  expect(JSON.stringify(changes).length).toBeLessThan(300);
  const after: Job = withChanges(far, changes);
  expect(after).toEqual(job);
  expect(after.plugs).toBe(far.plugs);
  expect(after.diagram.wires[8]).toBe(far.diagram.wires[7]);
  expect(after.diagram.parts[1]).toBe(far.diagram.parts[1]);
});

test("lists are told by what stays and what is new, in any order", () => {
  const random: Random = seededRandom(SEED);
  const thing = (n: number) => ({ n });
  let near = Array.from({ length: 30 }, (_, n) => thing(n));
  let far: readonly { n: number }[] = sent(near);
  for (let round = 0; round < 200; round++) {
    const next = near.filter(() => random.chance(0.9));
    for (let n = random.below(4); n > 0; n--)
      next.splice(random.below(next.length + 1), 0, thing(random.below(1000)));
    if (random.chance(0.2)) next.reverse();
    const before = far;
    far = fromRuns(far, sent(runsFrom(near, next)));
    expect(far).toEqual(next);
    const kept = next.filter((one) => near.includes(one)).length;
    expect(far.filter((one) => before.includes(one))).toHaveLength(kept);
    near = next;
  }
});
