import { sameList } from "../../base/index.ts";
import type { LiveState } from "../../circuit/index.ts";
import type { Probe, Step } from "../../job/index.ts";
import type { Session } from "../session.ts";
import type { SessionState } from "../state.ts";
import type { LivePort, OpenPlay } from "./live-port.ts";
import { showOperate, unanswered } from "./operate.ts";
import { isPaced, type OperateState, type Outcome } from "./operate-state.ts";
import { joinWaits, nextReplayStep, roundSeconds } from "./recordings.ts";

/** What keeping a play going needs of the world around it. */
export interface PlayClock {
  /** Milliseconds since any moment. */
  now(): number;
  /** Resolves after so many milliseconds. */
  wait(ms: number): Promise<void>;
}

/** Between the steps of a recording that runs through, milliseconds: time to look. */
const PAUSE = 1200;
/** Time that passed by itself is counted from here on, seconds. */
const LEAST_WAIT = 0.05;

/** One play from rest, for one circuit. A circuit that changes makes another. */
interface Run {
  readonly circuit: readonly unknown[];
  readonly port: LivePort;
  /** Steps that the port has done, the same objects as in the session's list. */
  performed: readonly Step[];
  live: LiveState | null;
  inFlight: Step | null;
  seen: OperateState | null;
  measured: { readonly red: Probe; readonly black: Probe; readonly live: LiveState } | null;
  /** What will be done by itself when nobody does anything before. */
  alarm: { readonly live: LiveState; readonly since: number; readonly of: string } | null;
  busy: boolean;
  dead: boolean;
}

/**
 * Answers what is done on the drawing: hands the session's steps one by one to a play and shows
 * what comes of each. When the circuit is edited, or earlier steps are taken back, a new play does
 * the steps again from rest, and an answer of the old one is never shown. Lets time pass where
 * something is timed, and lets recordings run. Returns the call that ends it.
 */
export function keepOperating(session: Session, open: OpenPlay, clock: PlayClock): () => void {
  let run: Run | null = null;
  const operate = () => session.get().operate;

  const end = () => {
    if (!run) return;
    run.dead = true;
    run.port.stop();
    run = null;
  };

  const begin = (circuit: readonly unknown[]) => {
    end();
    const { job, machine } = session.get();
    run = {
      circuit,
      port: open(job, machine === "" ? null : machine),
      performed: [],
      live: null,
      inFlight: null,
      seen: null,
      measured: null,
      alarm: null,
      busy: false,
      dead: false,
    };
    const { played } = operate();
    if (played.some(({ outcome }) => outcome)) {
      showOperate(session, { played: unanswered(played) });
    }
  };

  const look = () => {
    const state = session.get();
    if (!state.operate.on) {
      end();
      return;
    }
    const circuit = circuitIn(state);
    if (!run || !sameList(run.circuit, circuit) || strayedFrom(run, state.operate)) {
      begin(circuit);
    }
    if (!run || run.seen === state.operate || run.dead) return;
    run.seen = state.operate;
    void pump(run);
  };

  /** Works off what is to be done, one question at a time. */
  const pump = async (own: Run) => {
    if (own.busy) return;
    own.busy = true;
    try {
      if (!own.live) {
        const live = await own.port.state();
        if (own.dead) return;
        own.live = live;
        showOperate(session, { live, failed: null });
      }
      while (!own.dead && (await oneThing(own)));
    } catch (error) {
      if (own.dead) return;
      const why = error instanceof Error ? error.message : String(error);
      // Nothing more is asked of it; starting over opens another.
      showOperate(session, { failed: `The circuit could not be worked out: ${why}` });
      return;
    } finally {
      own.busy = false;
    }
    if (!own.dead) setAlarm(own);
  };

  /** Does the next step, or measures between the leads. Returns whether there was anything to do. */
  const oneThing = async (own: Run): Promise<boolean> => {
    const next = operate().played[own.performed.length];
    if (next) {
      if (putElapsedBefore(own, next.step)) return true;
      own.alarm = null;
      own.inFlight = next.step;
      const outcome = await perform(own, next.step);
      if (own.dead || !outcome) return false;
      own.inFlight = null;
      settle(own, next.step, outcome);
      return true;
    }
    return measure(own);
  };

  const perform = async (own: Run, step: Step): Promise<Outcome | null> => {
    const before = own.live?.events.length ?? 0;
    let left = step.do === "wait" ? step.seconds : 0;
    while (step.do === "wait" && isPaced(operate(), left)) {
      const slice = Math.min(left, Math.max(LEAST_WAIT, own.live?.nextIn ?? left));
      await clock.wait(slice * 1000);
      if (own.dead) return null;
      left = roundSeconds(left - slice);
      const live = await own.port.step({ do: "wait", seconds: slice });
      if (own.dead) return null;
      own.live = live;
      showOperate(session, { live });
      if (left <= 0) return outcomeOf(live, before);
    }
    const live = await own.port.step(step.do === "wait" ? { ...step, seconds: left } : step);
    own.live = live;
    return outcomeOf(live, before);
  };

  const settle = (own: Run, step: Step, outcome: Outcome) => {
    const { played, replay } = operate();
    const at = own.performed.length;
    let answered = played.map((one, index) => (index === at ? { step, outcome } : one));
    // A recording keeps its own steps, so that each stands beside what came of it.
    if (!replay) {
      const joined = joinWaits(answered.slice(0, at + 1));
      answered = [...joined, ...answered.slice(at + 1)];
      own.performed = joined.map((one) => one.step);
    } else own.performed = [...own.performed, step];
    showOperate(session, { played: answered, live: own.live });
  };

  /** What passed since the machine came to rest comes before what is done now. */
  const putElapsedBefore = (own: Run, next: Step): boolean => {
    const { alarm } = own;
    const { timeRuns, replay, played } = operate();
    if (!alarm || !timeRuns || replay || next.do === "wait") return false;
    const seconds = roundSeconds((clock.now() - alarm.since) / 1000);
    if (seconds < LEAST_WAIT || alarm.live.nextIn === null) return false;
    own.alarm = null;
    const at = own.performed.length;
    const wait = { step: { do: "wait", seconds } as const, outcome: null };
    showOperate(session, { played: [...played.slice(0, at), wait, ...played.slice(at)] });
    return true;
  };

  const measure = async (own: Run): Promise<boolean> => {
    const { red, black } = operate().leads;
    const { live, measured } = own;
    if (!live || red === null || black === null) return false;
    if (measured?.live === live && measured.red === red && measured.black === black) return false;
    own.measured = { red, black, live };
    const volts = await own.port.volts(red, black);
    const { leads } = operate();
    if (own.dead || leads.red !== red || leads.black !== black) return !own.dead;
    showOperate(session, { leads: { ...leads, volts } });
    return true;
  };

  /** Lets time pass, or a recording go on, unless something else is done before. */
  const setAlarm = (own: Run) => {
    const { live } = own;
    const { replay, timeRuns, played } = operate();
    const of = `${replay?.recording} ${replay?.runs} ${timeRuns} ${played.length}`;
    if (!live || (own.alarm?.live === live && own.alarm.of === of)) return;
    own.alarm = { live, since: clock.now(), of };
    const { alarm } = own;
    const later = (ms: number, act: () => void) =>
      void clock.wait(ms).then(() => {
        if (own.alarm === alarm && !own.dead) act();
      });
    if (replay) {
      if (!replay.runs) return;
      if (played.length < replay.steps.length) later(PAUSE, () => nextReplayStep(session));
      else showOperate(session, { replay: { ...replay, runs: false } });
    } else if (timeRuns && live.nextIn !== null) {
      const seconds = Math.max(LEAST_WAIT, live.nextIn);
      later(seconds * 1000, () => {
        own.alarm = null;
        const step = { do: "wait", seconds } as const;
        showOperate(session, { played: [...operate().played, { step, outcome: null }] });
      });
    }
  };

  const stopListening = session.subscribe(look);
  look();
  return () => {
    stopListening();
    end();
  };
}

const outcomeOf = (live: LiveState, before: number): Outcome => ({
  seconds: live.seconds,
  events: live.events.slice(before),
  refused: live.refused,
});

/** All that a play is made from. Names, readings and recordings are no part of it. */
function circuitIn({ job, machine }: SessionState): readonly unknown[] {
  const changes = job.machines.find((one) => one.id === machine)?.changes;
  return [job.diagram, job.links, job.plugs, job.systemVoltage, machine, changes];
}

/** True when the session no longer wants what this play has done. */
function strayedFrom(run: Run, { played, live, failed }: OperateState): boolean {
  const { performed, inFlight } = run;
  if (performed.some((step, index) => played[index]?.step !== step)) return true;
  if (inFlight !== null && played[performed.length]?.step !== inFlight) return true;
  return run.live !== null && live === null && failed === null;
}
