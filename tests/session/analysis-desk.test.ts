import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import type { Job } from "../../src/job/index.ts";
import { applyEdit, EMPTY_HISTORY } from "../../src/job/index.ts";
import {
  type AnalysisDesk,
  type AnalysisPort,
  analysisDeskOf,
  createAnalysisServer,
  createSession,
  keepAnalysed,
  type Session,
} from "../../src/session/index.ts";
import { bigJob } from "../support/big-job.ts";

const large = (): Job => frozen(bigJob(1200));

/** As a job is after it came through any edit: nothing of it changes in place. */
const frozen = (job: Job): Job =>
  applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  }).job;

/** A far side whose answers come when the test lets them. */
class HeldPort implements AnalysisPort {
  readonly begun: Job[] = [];
  readonly waiting: (() => void)[] = [];
  readonly sizes: number[] = [];
  stopped = false;
  private readonly server = createAnalysisServer();

  async begin(job: Job) {
    this.begun.push(job);
    this.server.begin(structuredClone(job));
  }

  check(...[changes, machine]: Parameters<AnalysisPort["check"]>) {
    this.sizes.push(JSON.stringify(changes).length);
    const message = structuredClone(changes);
    return new Promise<Awaited<ReturnType<AnalysisPort["check"]>>>((resolve) => {
      this.waiting.push(() => resolve(structuredClone(this.server.check(message, machine))));
    });
  }

  async answer(): Promise<never> {
    throw new Error("nobody asks here");
  }

  stop() {
    this.stopped = true;
  }

  /** Lets the oldest question be answered and its answer arrive. */
  async letAnswer() {
    await settled();
    this.waiting.shift()?.();
    await settled();
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

function begin(job: Job) {
  const session = createSession("one", job);
  const port = new HeldPort();
  const desk = keepAnalysed(session, () => port);
  return { session, port, desk };
}

const print = (session: Session, word: string) =>
  session.edit(`Print ${word}`, (draft) => {
    const module = draft.diagram.parts.find((part) => part.kind === "module");
    if (module?.kind === "module" && module.pins[0]) module.pins[0].printed = word;
  });

const printed = (desk: AnalysisDesk) => desk.get().result.roles[0]?.printed;

test("a small job is checked at once, wherever the far side is", () => {
  const { session, port, desk } = begin(frozen(bigJob(200)));
  expect(desk.isReady()).toBe(true);
  print(session, "GND");
  expect(desk.get().current).toBe(true);
  expect(printed(desk)).toBe("GND");
  expect(port.begun).toEqual([]);
});

test("a large job is not ready until the far side has answered, and says so then", async () => {
  const job = large();
  const { port, desk } = begin(job);
  let told = 0;
  desk.subscribe(() => told++);
  expect(desk.isReady()).toBe(false);
  await port.letAnswer();
  expect(told).toBeGreaterThan(0);
  expect(desk.isReady()).toBe(true);
  expect(desk.get().current).toBe(true);
  expect(desk.get().result).toEqual(checkJob(job, "machine1"));
});

test("older verdicts stay until the newer ones come, and what is sent is small", async () => {
  const { session, port, desk } = begin(large());
  desk.isReady();
  await port.letAnswer();
  print(session, "GND");
  const before = desk.get();
  expect(before.current).toBe(false);
  expect(printed(desk)).toBe("PWR");
  expect(desk.get()).toBe(before);
  await port.letAnswer();
  expect(desk.get().current).toBe(true);
  expect(desk.get().result).toEqual(checkJob(session.get().job, "machine1"));
  expect(port.begun).toHaveLength(1);
  expect(Math.max(...port.sizes)).toBeLessThan(200);
});

test("edits made meanwhile go together, and no older answer takes the place of a newer one", async () => {
  const { session, port, desk } = begin(large());
  desk.isReady();
  await port.letAnswer();
  print(session, "G");
  await settled();
  print(session, "GN");
  print(session, "GND");
  session.undo();
  session.redo();
  expect(port.waiting).toHaveLength(1);
  await port.letAnswer();
  expect(printed(desk)).toBe("G");
  expect(desk.get().current).toBe(false);
  await port.letAnswer();
  expect(printed(desk)).toBe("GND");
  expect(desk.get().current).toBe(true);
  expect(port.waiting).toHaveLength(0);
});

test("undoing to a job that was checked before needs nobody", async () => {
  const { session, port, desk } = begin(large());
  desk.isReady();
  await port.letAnswer();
  const first = session.get().job;
  print(session, "GND");
  await port.letAnswer();
  session.reopen(first);
  expect(desk.get().current).toBe(true);
  expect(printed(desk)).toBe("PWR");
});

test("another job opened while an answer is on its way is not given that answer", async () => {
  const { session, port, desk } = begin(large());
  desk.isReady();
  await port.letAnswer();
  print(session, "GND");
  await settled();
  const other = frozen({ ...bigJob(1300), title: "Another" });
  session.open("two", other);
  expect(desk.isReady()).toBe(false);
  await port.letAnswer();
  expect(desk.isReady()).toBe(false);
  await port.letAnswer();
  expect(desk.isReady()).toBe(true);
  expect(desk.get().result).toEqual(checkJob(other, "machine1"));
  expect(port.begun).toHaveLength(2);
});

test("the other machine is checked ahead, so that going over to it holds nothing up", async () => {
  const job = bigJob(1200);
  const [first] = job.machines;
  if (first) job.machines.push({ ...structuredClone(first), id: "machine2", name: "Second" });
  const { session, port, desk } = begin(frozen(job));
  desk.isReady();
  await port.letAnswer();
  expect(desk.get().current).toBe(true);
  await port.letAnswer();
  expect(port.waiting).toHaveLength(0);
  session.show({ machine: "machine2" });
  expect(desk.get().current).toBe(true);
  expect(desk.get().result).toEqual(checkJob(session.get().job, "machine2"));
  print(session, "GND");
  session.show({ machine: "machine1" });
  expect(desk.get().current).toBe(false);
  expect(printed(desk)).toBe("PWR");
});

test("where there is no far side everything is worked out at once", async () => {
  const session = createSession("one", large());
  const desk = keepAnalysed(session, () => {
    throw new Error("no workers here");
  });
  let ready = desk.isReady();
  desk.subscribe(() => {
    ready = desk.isReady();
  });
  await settled();
  expect(ready).toBe(true);
  print(session, "GND");
  expect(printed(desk)).toBe("GND");
  expect(desk.get().current).toBe(true);
});

test("a far side that breaks is stopped, and the edit is checked here", async () => {
  const { session, port, desk } = begin(large());
  desk.isReady();
  await port.letAnswer();
  port.check = () => Promise.reject(new Error("out of memory"));
  print(session, "GND");
  expect(desk.get().current).toBe(false);
  await settled();
  expect(port.stopped).toBe(true);
  expect(printed(desk)).toBe("GND");
  expect(desk.get().current).toBe(true);
});

test("a session that nobody set up a far side for has a desk all the same", () => {
  const session = createSession("one", large());
  expect(analysisDeskOf(session).get().current).toBe(true);
  expect(analysisDeskOf(session)).toBe(analysisDeskOf(session));
});
