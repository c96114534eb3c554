import {
  circuitOf,
  createPlay,
  doesWork,
  elementsOf,
  type LiveState,
  type PartState,
  type PlayEvent,
} from "../circuit/index.ts";
import type { Id, Job, Part, When } from "../job/index.ts";
import { stepsTo } from "./trial-moves.ts";

/** How a part stands once a trial is done: one that does not stay as it is `changes`. */
export type TrialState = "on" | "off" | "changes" | "unknown";

/** What a trial does to a machine that is as drawn, from rest on; loads and relays by their ids. */
export interface TrialOutcome {
  /** Why it can't be done, one sentence; then nothing below is said. */
  readonly refused: string | null;
  /** Come on while it is done, be it only on the way. */
  readonly brings: readonly Id[];
  /** Come on by themselves afterwards, the soonest first. */
  readonly later: readonly { readonly id: Id; readonly seconds: number }[];
  /** May come on or go off: that depends on something that nobody has said. */
  readonly may: readonly Id[];
  /** On at rest, and let go by it: what they hold moves too. */
  readonly drops: readonly Id[];
  /** Fuses and breakers that open. */
  readonly blows: readonly Id[];
  /** Every load and relay that is not simply off, as it is from then on. */
  readonly states: Readonly<Record<Id, Exclude<TrialState, "off">>>;
  /** Something is still timed where the looking ahead ends. */
  readonly timed: boolean;
}

/** Seconds that are looked ahead where something is timed (our own choice). */
const LOOK_AHEAD = 30;

/**
 * Shares of system voltage between which a load may be seen to work or not: a lamp glows, a motor
 * stalls, a valve may or may not shift (our own, cautious).
 */
const SURELY_OFF = 0.05;
const SURELY_ON = 0.7;

/**
 * Plays a trial from rest, step after step, and looks on for as long as something is timed. A
 * stand-in is not played: what one does on the machine is not worked out here.
 */
export function trialOutcome(job: Job, machine: Id, when: When): TrialOutcome {
  if (when.standIn !== undefined)
    return { ...NOTHING, refused: "What a stand-in does is not worked out here." };
  const play = createPlay(job, machine);
  const rest = play.state();
  const moments: LiveState[] = [rest];
  for (const step of stepsTo(when)) {
    const next = play.step(step);
    if (next.refused !== null) return { ...NOTHING, refused: next.refused };
    moments.push(next);
  }
  const done = moments.at(-1) ?? rest;
  const after = done.nextIn === null ? done : play.step({ do: "wait", seconds: LOOK_AHEAD });
  // where too much happens in that time, all that is timed is left open
  const last = after.refused === null ? after : done;
  if (last !== done) moments.push(last);

  const ids = circuitOf(job, machine)
    .parts.filter((part) => isSeen(part, job.systemVoltage))
    .map(({ id }) => id);
  const watched = new Set(ids);
  const events = last.events.slice(rest.events.length);
  const wasOn = (id: Id) => rest.parts[id]?.on === true;
  const came = new Map<Id, number>();
  for (const { part, seconds } of turns(events, "on"))
    if (watched.has(part) && !wasOn(part) && !came.has(part)) came.set(part, seconds);
  const later = [...came].flatMap(([id, seconds]) => (seconds > 0 ? [{ id, seconds }] : []));
  const may = ids.filter(
    (id) => !came.has(id) && moments.slice(1).some(({ parts }) => isOpen(parts[id])),
  );
  const moved = new Set(
    turns(events, "either").flatMap((one) => (one.seconds > 0 ? one.part : [])),
  );
  return {
    refused: null,
    brings: ids.filter((id) => came.get(id) === 0),
    later: later.toSorted((a, b) => a.seconds - b.seconds),
    may,
    drops: [...new Set([...turns(events, "off")].map(({ part }) => part))].filter(
      (id) => watched.has(id) && wasOn(id),
    ),
    blows: events.flatMap((event) => (event.what === "blew" ? [event.part] : [])),
    states: Object.fromEntries(
      ids.flatMap((id) => {
        const open = isOpen(done.parts[id]) || isOpen(last.parts[id]);
        const state = open ? "unknown" : moved.has(id) ? "changes" : standing(last.parts[id]);
        return state === "off" ? [] : [[id, state]];
      }),
    ),
    timed: last.nextIn !== null,
  };
}

/** Does something that is seen, heard or felt. What a module draws for itself is none of that. */
const isSeen = (part: Part, systemVoltage: number): boolean =>
  part.kind !== "module" && elementsOf(part, systemVoltage).some(({ law }) => doesWork(law));

const NOTHING: TrialOutcome = {
  refused: null,
  brings: [],
  later: [],
  may: [],
  drops: [],
  blows: [],
  states: {},
  timed: false,
};

const isOpen = (state: PartState | undefined): boolean =>
  state?.undecided === true || state?.oscillates === true;

function standing(state: PartState | undefined): TrialState {
  if (!state) return "off";
  const { on, share } = state;
  // of a relay only whether it is pulled in counts
  if (share === 0) return on ? "on" : "off";
  if (share >= SURELY_ON) return "on";
  return share > SURELY_OFF ? "unknown" : "off";
}

const ON: ReadonlySet<PlayEvent["what"]> = new Set(["on", "pulled-in"]);
const OFF: ReadonlySet<PlayEvent["what"]> = new Set(["off", "dropped-out"]);

function turns(events: readonly PlayEvent[], way: "on" | "off" | "either") {
  return events.flatMap((event) => {
    const is = (way !== "off" && ON.has(event.what)) || (way !== "on" && OFF.has(event.what));
    return is && "part" in event ? [{ part: event.part, seconds: event.seconds }] : [];
  });
}
