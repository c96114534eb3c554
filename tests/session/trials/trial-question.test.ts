import { expect, test } from "vitest";
import { applyEdit, EMPTY_HISTORY, type Job } from "../../../src/job/index.ts";
import { trialOutcome } from "../../../src/readings/index.ts";
import {
  type AnalysisPort,
  createAnalysisServer,
  createSession,
  keepAnswering,
} from "../../../src/session/index.ts";
import { bigJob } from "../../support/big-job.ts";

/** As a job is after it came through any edit: nothing of it changes in place. */
const frozen = (job: Job): Job =>
  applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  }).job;

/** A far side that answers as a worker would: copies go in and copies come out. */
function port(asked: string[]): AnalysisPort {
  const server = createAnalysisServer();
  return {
    begin: async (job) => server.begin(structuredClone(job)),
    check: async (changes, machine) => server.check(structuredClone(changes), machine),
    goOn: async (machine) => server.goOn(machine),
    answer: async (changes, machine, question) => {
      asked.push(question.about);
      return structuredClone(server.answer(structuredClone(changes), machine, question));
    },
    stop: () => {},
  };
}

const WHEN = { switches: { S1: "on" } };
const TRIAL = { about: "trial", when: WHEN } as const;
const settled = () => new Promise((resolve) => setTimeout(resolve));

test("a trial on a middling job is worked out beside the screen, though a check is not", async () => {
  const asked: string[] = [];
  const job = frozen(bigJob(200));
  const session = createSession("one", job);
  const desk = keepAnswering(session, () => port(asked));
  expect(desk.answer(TRIAL)).toBeNull();
  const leave = desk.ask(TRIAL);
  await settled();
  expect(asked).toEqual(["trial"]);
  expect(desk.answer(TRIAL)).toEqual(trialOutcome(job, "machine1", WHEN));
  // after an edit the answer from before is none any more
  session.edit("Rename", (draft) => {
    draft.title = "other";
  });
  expect(desk.answer(TRIAL)).toBeNull();
  await settled();
  expect(desk.answer(TRIAL)).not.toBeNull();
  leave();
});

test("on a small job a trial is answered at once, and never sent", () => {
  const asked: string[] = [];
  const session = createSession("one", frozen(bigJob(40)));
  const desk = keepAnswering(session, () => port(asked));
  expect(desk.answer(TRIAL)?.refused).toBeNull();
  expect(asked).toEqual([]);
});
