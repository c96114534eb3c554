import { expect, test } from "vitest";
import { checkJob, isLookedAtAgain } from "../../src/check/index.ts";
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
import { pluggedBigJob } from "../support/plugged-big-job.ts";

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
  readonly asked: ("check" | "go on")[] = [];
  stopped = false;
  private readonly server = createAnalysisServer();

  async begin(job: Job) {
    this.begun.push(job);
    this.server.begin(structuredClone(job));
  }

  check(...[changes, machine]: Parameters<AnalysisPort["check"]>) {
    this.sizes.push(JSON.stringify(changes).length);
    this.asked.push("check");
    const message = structuredClone(changes);
    return new Promise<Awaited<ReturnType<AnalysisPort["check"]>>>((resolve) => {
      this.waiting.push(() => resolve(structuredClone(this.server.check(message, machine))));
    });
  }

  goOn(machine: string) {
    this.asked.push("go on");
    return new Promise<Awaited<ReturnType<AnalysisPort["goOn"]>>>((resolve) => {
      this.waiting.push(() => resolve(structuredClone(this.server.goOn(machine))));
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

/** A large job with readings at one of its plugs, two of them odd. */
const measured = (): Job => frozen(pluggedBigJob(1200, 4, 2));

/** Lets steps be answered until nothing is looked at again; how many. */
async function letAllAnswer({ port, desk }: Pick<ReturnType<typeof begin>, "port" | "desk">) {
  let steps = 0;
  while (desk.get().again.length > 0 && steps < 200) {
    await port.letAnswer();
    steps++;
  }
  return steps;
}

const draw = (session: Session) =>
  session.edit("Draw a wire", ({ diagram }) => {
    diagram.wires.push({ id: `N${diagram.wires.length}`, from: "A10:4", to: "E1:1" });
  });

test("everything but the readings is answered first, and their verdicts follow", async () => {
  const job = measured();
  const { port, desk } = begin(job);
  desk.isReady();
  await port.letAnswer();
  const whole = checkJob(job, "machine1");
  const isByReadings = ({ rule }: { rule: string }) => rule.startsWith("reading");
  expect(desk.get().current).toBe(true);
  expect(desk.get().again).toHaveLength(16);
  expect(desk.get().result.findings).toEqual(whole.findings.filter((one) => !isByReadings(one)));
  let last = desk.get().again.length;
  let told = 0;
  while (last > 0) {
    await port.letAnswer();
    const { again } = desk.get();
    expect(again.length).toBeLessThanOrEqual(last);
    if (again.length < last) told++;
    last = again.length;
  }
  // state by state, as they come
  expect(told).toBeGreaterThan(3);
  expect(desk.get().result).toEqual(whole);
  expect(port.waiting).toHaveLength(0);
});

test("an edit is answered before any reading of the job before it is gone on with", async () => {
  const { session, port, desk } = begin(measured());
  desk.isReady();
  await port.letAnswer();
  await port.letAnswer();
  await port.letAnswer();
  await settled();
  draw(session);
  const { length } = port.asked;
  expect(port.asked.at(-1)).toBe("go on");
  // the one small step that is under way, and then the edit
  await port.letAnswer();
  expect(port.asked.slice(length)).toEqual(["check"]);
  await port.letAnswer();
  expect(desk.get().current).toBe(true);
  await letAllAnswer({ port, desk });
  expect(desk.get().result).toEqual(checkJob(session.get().job, "machine1"));
  expect(port.asked.slice(length + 1).every((one) => one === "go on")).toBe(true);
});

test("verdicts of before stay after an edit, told as being looked at again", async () => {
  const { session, port, desk } = begin(measured());
  desk.isReady();
  await port.letAnswer();
  await letAllAnswer({ port, desk });
  const before = desk.get().result.findings;
  const odd = before.filter(({ rule }) => rule.startsWith("reading"));
  expect(odd.length).toBeGreaterThan(0);
  draw(session);
  expect(desk.get().current).toBe(false);
  await port.letAnswer();
  const { result, current, again } = desk.get();
  expect(current).toBe(true);
  for (const one of odd) {
    expect(result.findings).toContain(one);
    expect(isLookedAtAgain(one, again)).toBe(true);
  }
  for (const one of result.findings.filter((one) => !odd.includes(one)))
    expect(isLookedAtAgain(one, again)).toBe(false);
  await letAllAnswer({ port, desk });
  expect(desk.get().result).toEqual(checkJob(session.get().job, "machine1"));
  for (const one of desk.get().result.findings)
    expect(isLookedAtAgain(one, desk.get().again)).toBe(false);
});

test("a machine checked ahead is gone on with until all of it is known", async () => {
  const job = pluggedBigJob(1200, 4, 1);
  const [first] = job.machines;
  if (first) job.machines.push({ ...structuredClone(first), id: "machine2", name: "Second" });
  const { session, port, desk } = begin(frozen(job));
  desk.isReady();
  for (let n = 0; n < 200 && (n === 0 || port.waiting.length > 0); n++) await port.letAnswer();
  session.show({ machine: "machine2" });
  expect(desk.get()).toMatchObject({ current: true, again: [] });
  expect(desk.get().result).toEqual(checkJob(session.get().job, "machine2"));
});
