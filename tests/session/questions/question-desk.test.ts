import { expect, test } from "vitest";
import { applyEdit, EMPTY_HISTORY, type Job } from "../../../src/job/index.ts";
import { expectedAt, predict } from "../../../src/readings/index.ts";
import {
  type AnalysisPort,
  createAnalysisServer,
  createSession,
  keepAnswering,
  type Question,
  questionDeskOf,
} from "../../../src/session/index.ts";
import { bigJob } from "../../support/big-job.ts";

/** As a job is after it came through any edit: nothing of it changes in place. */
const frozen = (job: Job): Job =>
  applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  }).job;

/** A far side whose answers come when the test lets them. */
class HeldPort implements AnalysisPort {
  readonly asked: Question[] = [];
  readonly waiting: (() => void)[] = [];
  begun = 0;
  stopped = 0;
  private readonly server = createAnalysisServer();

  async begin(job: Job) {
    this.begun++;
    this.server.begin(structuredClone(job));
  }

  async check(): Promise<never> {
    throw new Error("nobody checks here");
  }

  async goOn(): Promise<never> {
    throw new Error("nobody checks here");
  }

  answer: AnalysisPort["answer"] = (changes, machine, question) => {
    this.asked.push(question);
    const message = structuredClone({ changes, question });
    return new Promise((resolve) => {
      this.waiting.push(() =>
        resolve(structuredClone(this.server.answer(message.changes, machine, message.question))),
      );
    });
  };

  stop() {
    this.stopped++;
    this.waiting.length = 0;
  }

  async letAnswer() {
    await settled();
    this.waiting.shift()?.();
    await settled();
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

const setup = (red: string) => ({ quantity: "volts", red, black: "chassis", when: {} }) as const;
const about = (red: string) => ({ about: "setup", setup: setup(red) }) as const;
const SHEET = {
  about: "sheet",
  options: { side: "wire", size: "A4", date: "2026-01-02", revision: "A", plug: "XA10" },
} as const;

function begin(job: Job) {
  const session = createSession("one", frozen(job));
  const port = new HeldPort();
  const desk = keepAnswering(session, () => port);
  return { session, port, desk };
}

test("a small job is answered on the spot, wherever the far side is", () => {
  const { session, port, desk } = begin(bigJob(200));
  const { job, machine } = session.get();
  expect(desk.answer(about("XA10:1"))?.prediction).toEqual(predict(job, machine, setup("XA10:1")));
  expect(port.begun).toBe(0);
});

test("a large one is answered by the far side alone, with what would be answered here", async () => {
  const { session, port, desk } = begin(bigJob(1200));
  const cavity = { about: "cavity", cavity: "XA10:1" } as const;
  expect(desk.answer(cavity)).toBeNull();
  let told = 0;
  desk.subscribe(() => told++);
  desk.ask(cavity);
  await settled();
  expect(desk.answer(cavity)).toBeNull();
  await port.letAnswer();
  expect(told).toBeGreaterThan(0);
  const { job, machine } = session.get();
  const offers = desk.answer(cavity);
  expect(offers?.length).toBeGreaterThan(0);
  expect(offers?.map(({ moves: _, ...offer }) => offer)).toEqual(
    expectedAt(job, machine, "XA10:1"),
  );
  // The same object as long as it is the same job: screens compare by identity.
  expect(desk.answer(cavity)).toBe(offers);
});

test("an answer that an edit overtook is never given for the job as it is now", async () => {
  const { session, port, desk } = begin(bigJob(1200));
  desk.ask(about("XA10:1"));
  await settled();
  session.edit("Take the feed of A10 out", (draft) => {
    const wires = draft.diagram.wires;
    wires.splice(
      wires.findIndex(({ to }) => to === "A10:1"),
      1,
    );
  });
  // The answer to the job of before comes in late.
  await port.letAnswer();
  expect(desk.answer(about("XA10:1"))).toBeNull();
  // It is asked again by itself, and only the job as it is now is answered for.
  await port.letAnswer();
  const { job, machine } = session.get();
  expect(desk.answer(about("XA10:1"))?.prediction).toEqual(predict(job, machine, setup("XA10:1")));
  expect(port.begun).toBe(1);
});

test("what nobody waits for any more is not asked at all", async () => {
  const { port, desk } = begin(bigJob(1200));
  const leave = ["XA10:1", "XA10:2", "XA10:3"].map((red) => desk.ask(about(red)));
  leave[1]?.();
  await port.letAnswer();
  await port.letAnswer();
  await port.letAnswer();
  expect(port.asked).toEqual([about("XA10:1"), about("XA10:3")]);
});

test("a long question is broken off when its window closes, and the next one is answered", async () => {
  const { port, desk } = begin(bigJob(1200));
  const close = desk.ask(SHEET);
  desk.ask(about("XA10:2"));
  await settled();
  expect(port.asked).toEqual([SHEET]);
  close();
  expect(port.stopped).toBe(1);
  await port.letAnswer();
  expect(desk.answer(about("XA10:2"))).not.toBeNull();
  expect(desk.answer(SHEET)).toBeNull();
});

test("where the far side can't be started or breaks, answers come on the spot", async () => {
  const session = createSession("one", frozen(bigJob(1200)));
  const desk = keepAnswering(session, () => {
    throw new Error("not here");
  });
  desk.ask(about("XA10:1"));
  await settled();
  expect(desk.answer(about("XA10:1"))?.prediction.predicted).toBeTypeOf("number");
});

test("a session that nobody set up a far side for is answered all the same", () => {
  const session = createSession("one", frozen(bigJob(1200)));
  expect(questionDeskOf(session).answer(about("XA10:1"))).not.toBeNull();
});
