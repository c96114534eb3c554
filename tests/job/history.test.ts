import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import {
  applyEdit,
  EMPTY_HISTORY,
  type Job,
  jobSchema,
  redo,
  referenceIssues,
  undo,
  type Versioned,
} from "../../src/job/index.ts";
import { randomEdit } from "../support/random-edit.ts";
import { randomJob } from "../support/random-job.ts";

const begin = (seed: number): Versioned => ({
  job: randomJob(seededRandom(seed)),
  history: EMPTY_HISTORY,
});

function editBy(seed: number, now: Versioned): Versioned {
  const { label, change } = randomEdit(seededRandom(seed));
  return applyEdit(now, label, change);
}

/** Repeats a step until it gives the same object back; fails when it never does. */
function untilDone(step: (now: Versioned) => Versioned, from: Versioned): Versioned {
  const limit = from.history.done.length + from.history.undone.length + 1;
  let now = from;
  for (let n = 0; n < limit; n++) {
    const next = step(now);
    if (next === now) return now;
    now = next;
  }
  throw new Error("there were more steps than edits");
}

const seeds = fc.integer({ min: 0, max: 0xffffffff });

describe("any sequence of edits", () => {
  test("undone gives the first document, and redone the last", () => {
    fc.assert(
      fc.property(seeds, fc.array(seeds, { maxLength: 60 }), (jobSeed, editSeeds) => {
        const first = begin(jobSeed);
        const before = structuredClone(first.job);
        const last = editSeeds.reduce((now, seed) => editBy(seed, now), first);
        const after = structuredClone(last.job);
        const undone = untilDone(undo, last);
        expect(undone.job).toStrictEqual(before);
        expect(undone.history.done).toHaveLength(0);
        expect(untilDone(redo, undone).job).toStrictEqual(after);
        // Neither way has touched a document that somebody may still hold.
        expect(first.job).toStrictEqual(before);
        expect(last.job).toStrictEqual(after);
      }),
      { numRuns: 150 },
    );
  });

  test("undone one by one passes every document on the way, under the label of its edit", () => {
    fc.assert(
      fc.property(seeds, fc.array(seeds, { maxLength: 25 }), (jobSeed, editSeeds) => {
        const states = [begin(jobSeed)];
        for (const seed of editSeeds) {
          const now = states[states.length - 1] as Versioned;
          const next = editBy(seed, now);
          if (next !== now) states.push(next);
        }
        let now = states[states.length - 1] as Versioned;
        for (const expected of states.slice(0, -1).reverse()) {
          now = undo(now);
          expect(now.job).toStrictEqual(expected.job);
          expect(now.history.done.map((edit) => edit.label)).toEqual(
            expected.history.done.map((edit) => edit.label),
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  test("mixed with undo and redo agrees with a list of whole documents", () => {
    const move = fc.oneof(
      { weight: 4, arbitrary: seeds },
      { weight: 2, arbitrary: fc.constant("undo" as const) },
      { weight: 2, arbitrary: fc.constant("redo" as const) },
    );
    fc.assert(
      fc.property(seeds, fc.array(move, { maxLength: 80 }), (jobSeed, moves) => {
        let now = begin(jobSeed);
        // The slow obvious way: every document kept, and a place in the list.
        let documents: Job[] = [structuredClone(now.job)];
        let at = 0;
        for (const step of moves) {
          if (step === "undo") {
            now = undo(now);
            at = Math.max(0, at - 1);
          } else if (step === "redo") {
            now = redo(now);
            at = Math.min(documents.length - 1, at + 1);
          } else {
            const next = editBy(step, now);
            if (next !== now) {
              documents = [...documents.slice(0, at + 1), structuredClone(next.job)];
              at += 1;
            }
            now = next;
          }
          expect(now.job).toStrictEqual(documents[at]);
        }
        expect(now.history.done).toHaveLength(at);
        expect(now.history.undone).toHaveLength(documents.length - 1 - at);
      }),
      { numRuns: 80 },
    );
  });
});

test("there is no limit: three thousand edits are all taken back", () => {
  let now = begin(1);
  const before = structuredClone(now.job);
  for (let n = 0; n < 3000; n++) {
    now = applyEdit(now, "Name the job", (draft) => {
      draft.title = `Job ${n}`;
    });
  }
  expect(now.history.done).toHaveLength(3000);
  expect(untilDone(undo, now).job).toStrictEqual(before);
});

describe("edits with one merge key", () => {
  test("are one step, whatever they change and however it is undone and redone", () => {
    fc.assert(
      fc.property(
        seeds,
        fc.array(seeds, { maxLength: 5 }),
        fc.array(seeds, { minLength: 1, maxLength: 12 }),
        (jobSeed, earlier, merged) => {
          const first = earlier.reduce((now, seed) => editBy(seed, now), begin(jobSeed));
          const before = structuredClone(first.job);
          let plain = first;
          let joined = first;
          for (const seed of merged) {
            const { label, change } = randomEdit(seededRandom(seed));
            plain = applyEdit(plain, label, change);
            joined = applyEdit(joined, label, randomEdit(seededRandom(seed)).change, {
              mergeKey: "one visit",
            });
          }
          expect(joined.job).toStrictEqual(plain.job);
          const steps = joined.history.done.length - first.history.done.length;
          const same = JSON.stringify(joined.job) === JSON.stringify(before);
          if (same) expect(steps).toBe(0);
          else expect(steps).toBe(1);
          if (steps === 1) {
            const undone = undo(joined);
            expect(undone.job).toStrictEqual(before);
            expect(redo(undone).job).toStrictEqual(plain.job);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  const rename = (title: string) => (draft: Job) => {
    draft.title = title;
  };
  const visit = { mergeKey: "a" };

  test("end where another edit came between, and where the key is another", () => {
    let now = applyEdit(begin(7), "Name", rename("A"), visit);
    now = applyEdit(now, "Other", (draft) => {
      draft.systemVoltage = 48;
    });
    now = applyEdit(now, "Name", rename("AB"), visit);
    now = applyEdit(now, "Name", rename("ABC"), { mergeKey: "b" });
    expect(now.history.done.map((edit) => edit.label)).toEqual(["Name", "Other", "Name", "Name"]);
    expect(undo(now).job.title).toBe("AB");
  });

  test("that put everything back leave no step behind", () => {
    const first = begin(8);
    const typed = applyEdit(first, "Name", rename("A"), visit);
    const back = applyEdit(typed, "Name", rename(first.job.title), visit);
    expect(back.history).toEqual(first.history);
    expect(back.job).toStrictEqual(first.job);
  });

  test("forget what had been taken back", () => {
    let now = applyEdit(begin(9), "Name", rename("A"), visit);
    now = undo(applyEdit(now, "Other", rename("X")));
    now = applyEdit(now, "Name", rename("AB"), visit);
    expect(now.history).toMatchObject({ done: [{ label: "Name" }], undone: [] });
  });
});

describe("a single edit", () => {
  const rename = (title: string) => (draft: Job) => {
    draft.title = title;
  };

  test("that changes nothing is not a step, and keeps what can be redone", () => {
    const changed = undo(applyEdit(begin(2), "Name the job", rename("A")));
    const same = applyEdit(changed, "Name the job", rename(changed.job.title));
    expect(same).toBe(changed);
    expect(redo(same).job.title).toBe("A");
  });

  test("made after an undo forgets what was taken back", () => {
    const taken = undo(applyEdit(begin(3), "Name the job", rename("A")));
    const other = applyEdit(taken, "Name the job", rename("B"));
    expect(redo(other)).toBe(other);
    expect(undo(other).job).toStrictEqual(taken.job);
  });

  test("that fails half-way leaves the document and the history as they were", () => {
    const now = begin(4);
    const before = structuredClone(now);
    const fail = () =>
      applyEdit(now, "Fail", (draft) => {
        draft.title = "half done";
        throw new Error("no");
      });
    expect(fail).toThrow("no");
    expect(now).toStrictEqual(before);
  });

  test("is plain data: it survives being written and read", () => {
    const now = applyEdit(begin(5), "Name the job", rename("A"));
    const [edit] = now.history.done;
    expect(JSON.parse(JSON.stringify(edit))).toEqual(edit);
  });
});

test("random jobs are whole: no reference leads nowhere", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      expect(referenceIssues(randomJob(seededRandom(seed)))).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

test("random jobs and random edits are what the schema accepts", () => {
  fc.assert(
    fc.property(seeds, fc.array(seeds, { maxLength: 20 }), (jobSeed, editSeeds) => {
      const last = editSeeds.reduce((now, seed) => editBy(seed, now), begin(jobSeed));
      expect(jobSchema.safeParse(last.job).error).toBeUndefined();
    }),
    { numRuns: 50 },
  );
});

test("random edits are of many kinds and mostly change something", () => {
  let now = begin(6);
  const labels = new Set<string>();
  let changed = 0;
  for (let seed = 0; seed < 400; seed++) {
    const next = editBy(seed, now);
    if (next !== now) {
      changed += 1;
      labels.add(next.history.done.at(-1)?.label ?? "");
    }
    now = next;
  }
  expect(labels.size).toBeGreaterThan(20);
  expect(changed).toBeGreaterThan(250);
});
