import type { LiveState, PlayEvent } from "../../../src/circuit/index.ts";
import type { Job, Step } from "../../../src/job/index.ts";
import type { LivePort, OpenPlay, PlayClock } from "../../../src/session/index.ts";
import { STILL } from "./live-state.ts";

/** A port whose answers are let out one by one, so that a test decides what comes when. */
export interface FakePort extends LivePort {
  readonly job: Job;
  readonly asked: readonly Step[];
  readonly stopped: boolean;
  /** Lets the oldest question that waits be answered. */
  answer(): Promise<void>;
}

/**
 * Plays that know no circuit: a step moves switches and time, S1 pressed lights P1, S9 is nowhere,
 * and while S1 is pressed something is timed every two seconds.
 */
export function fakePlays(at: "once" | "when-let" = "once"): {
  open: OpenPlay;
  ports: FakePort[];
} {
  const ports: FakePort[] = [];
  const open: OpenPlay = (job) => {
    let live = STILL;
    const asked: Step[] = [];
    const waiting: (() => void)[] = [];
    let stopped = false;
    const later = <T>(value: () => T): Promise<T> =>
      at === "once"
        ? Promise.resolve().then(value)
        : new Promise((done) => waiting.push(() => done(value())));
    const port: FakePort = {
      job,
      asked,
      get stopped() {
        return stopped;
      },
      answer: async () => {
        waiting.shift()?.();
        await settled();
      },
      state: () => later(() => live),
      step: (step) => {
        asked.push(step);
        return later(() => {
          live = after(live, step);
          return live;
        });
      },
      volts: (red, black) => later(() => (red === black ? 0 : 12 + live.seconds)),
      stop: () => {
        stopped = true;
      },
    };
    ports.push(port);
    return port;
  };
  return { open, ports };
}

function after(live: LiveState, step: Step): LiveState {
  const known = !("switch" in step && step.switch === "S9");
  if (!known) return { ...live, refused: "S9 is not a switch of this machine." };
  const seconds = live.seconds + (step.do === "wait" ? step.seconds : 0);
  const positions: Record<string, string> = { ...live.when.switches };
  if (step.do === "turn") positions[step.switch] = step.position;
  if (step.do === "release") delete positions[step.switch];
  const pressed = positions.S1 === "pressed";
  const was = live.when.switches?.S1 === "pressed";
  const events: PlayEvent[] = [...live.events];
  if (pressed !== was) events.push({ seconds, what: pressed ? "on" : "off", part: "P1" });
  return {
    ...live,
    when: { switches: positions },
    seconds,
    nextIn: pressed ? 2 : null,
    steps: [...live.steps, step],
    events,
    parts: {
      P1: { on: pressed, share: pressed ? 1 : 0, amps: pressed ? 1 : 0 },
      S1: { on: false, share: 0, amps: 0, position: positions.S1 ?? "released" },
    },
    refused: null,
  };
}

/** Lets everything that waits on nothing but promises happen. */
export const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/** A clock that stands until it is told how far to go. */
export function handClock(): PlayClock & { pass(ms: number): Promise<void> } {
  let now = 0;
  let waiting: { due: number; done: () => void }[] = [];
  return {
    now: () => now,
    wait: (ms) => new Promise((done) => waiting.push({ due: now + ms, done })),
    async pass(ms) {
      const end = now + ms;
      for (;;) {
        await settled();
        const next = waiting.toSorted((a, b) => a.due - b.due)[0];
        if (!next || next.due > end) break;
        now = Math.max(now, next.due);
        waiting = waiting.filter((one) => one !== next);
        next.done();
      }
      now = end;
      await settled();
    },
  };
}
