import type { Id, Job, Probe, Step } from "../../job/index.ts";
import { circuitOf } from "../machine-circuit.ts";
import { between, type Wiring, wire } from "../solve/index.ts";
import { doubtsOf, undecidedParts } from "./doubts.ts";
import { drawnBy } from "./drawn-by.ts";
import { changeEvents, loadEvents } from "./events.ts";
import { AT_REST, type Hands, handle, whenOf } from "./hands.ts";
import { type Layout, layouts } from "./layout.ts";
import { tick } from "./levels.ts";
import type { LiveState } from "./live-state.ts";
import { atRest, type Memory, nextDue } from "./memory.ts";
import type { Overload } from "./overload.ts";
import { partStates, withUndecided } from "./part-states.ts";
import type { PlayEvent } from "./play-event.ts";
import { type Rest, settle } from "./settle.ts";
import { pointStates } from "./snapshot.ts";

/** A machine being operated on the drawing: one step at a time, each answered by the new state. */
export interface Play {
  /** A step that can't be done leaves all as it was and says why in `refused`. */
  step(step: Step): LiveState;
  state(): LiveState;
  /** Back to everything at rest, every fuse good. */
  reset(): LiveState;
  /** V(red) − V(black) at this moment; null while nothing ties the two together. */
  volts(red: Probe, black: Probe): number | null;
}

/** Seconds of one wait: some eleven days. */
const LONGEST_WAIT = 1e6;
/** Things that may happen by themselves in one wait: a flasher left on for a day is not played out. */
const MOST_IN_A_WAIT = 1000;

/** Everything that is so at one moment. Never changed: the next step makes another. */
interface Moment {
  readonly hands: Hands;
  readonly seconds: number;
  readonly wiring: Wiring;
  readonly layout: Layout;
  readonly rest: Rest;
  readonly parts: LiveState["parts"];
  readonly oscillating: readonly Id[];
  readonly steps: readonly Step[];
  readonly events: readonly PlayEvent[];
  /** Ids of deciders of which nobody could tell what they did before this step. */
  readonly doubtedBefore: ReadonlySet<string>;
}

/** What is seen of a moment on the drawing. */
type View = Pick<LiveState, "wires" | "pins" | "cavities" | "parts" | "doubts">;

type Start = Omit<Moment, "rest" | "parts" | "oscillating" | "events">;

/** At rest, engine off, all plugged in and good. */
export function createPlay(job: Job, machine: Id | null): Play {
  const circuit = circuitOf(job, machine);

  const layoutOf = layouts(job, circuit);
  const put = (hands: Hands): Pick<Moment, "hands" | "wiring" | "layout"> => {
    const when = whenOf(hands);
    const wiring = wire(job, machine, when);
    return { hands, wiring, layout: layoutOf(wiring, when) };
  };

  /** Lets all follow at one instant. */
  const settled = (
    start: Start,
    memory: Memory,
    blown: ReadonlySet<Id>,
    before: Moment | null,
  ): Moment => {
    const { wiring, layout, hands, seconds, steps, doubtedBefore } = start;
    const rest = settle(wiring, memory, blown, seconds, before?.rest.point ?? null);
    const ids = new Set(rest.oscillating);
    const oscillating = [
      ...new Set(wiring.deciders.flatMap(({ id, part }) => (ids.has(id) ? [part] : []))),
    ];
    const parts = partStates(
      circuit,
      wiring,
      rest.point,
      rest.memory,
      hands,
      rest.blown,
      new Set(oscillating),
    );
    const cause = (blew: Overload, at: Rest["point"]) => drawnBy(wiring, layout, at, blew);
    const events = [
      ...(before?.events ?? []),
      ...changeEvents(wiring, rest.changes, seconds, cause),
      ...loadEvents(circuit, wiring, before?.parts ?? null, parts, seconds),
      ...(oscillating.length > 0 && oscillating.join(" ") !== before?.oscillating.join(" ")
        ? [{ seconds, what: "oscillates", parts: oscillating } as const]
        : []),
    ];
    return {
      wiring,
      layout,
      hands,
      seconds,
      steps,
      doubtedBefore,
      rest,
      parts,
      oscillating,
      events,
    };
  };

  const begin = () => {
    const start = { ...put(AT_REST), seconds: 0, steps: [], doubtedBefore: new Set<string>() };
    return settled(start, atRest(start.wiring), new Set(), null);
  };

  /** The moment after a step, or why it can't be done. */
  const after = (last: Moment, step: Step): Moment | string => {
    const now = { ...last, doubtedBefore: viewOf(last).doubted };
    if (step.do === "wait" && !(step.seconds > 0 && step.seconds <= LONGEST_WAIT))
      return `A wait takes some seconds, up to ${LONGEST_WAIT}, not ${step.seconds}.`;
    if (step.do === "wait") return passTime(now, step.seconds, [...now.steps, step]);
    const handled = handle(job, circuit, now.hands, step);
    if (!handled.ok) return handled.why;
    const { hands } = handled;
    const { rest } = now;
    const blown = new Set(rest.blown);
    if (step.do === "fit") blown.delete(step.id);
    const steps = [...now.steps, step];
    if (sameHands(hands, now.hands) && blown.size === rest.blown.size) return { ...now, steps };
    return settled({ ...now, ...put(hands), steps }, rest.memory, blown, now);
  };

  const passTime = (start: Moment, seconds: number, steps: readonly Step[]): Moment | string => {
    const end = tick(start.seconds + seconds);
    let now: Moment = { ...start, steps };
    for (let count = 0; ; count++) {
      const due = nextDue(now.rest.memory);
      if (due === null || due > end) return { ...now, seconds: end };
      if (count === MOST_IN_A_WAIT) {
        const played = now.seconds - start.seconds;
        const most = played >= 1 ? Math.floor(played) : Number(played.toPrecision(1));
        return `Too much happens by itself in ${seconds} s: wait ${most} s at most, and then again.`;
      }
      now = settled({ ...now, seconds: due }, now.rest.memory, now.rest.blown, now);
    }
  };

  // time that passes without anything happening leaves all as it is
  const known = new WeakMap<Rest, { view: View; doubted: ReadonlySet<string> }>();
  const viewOf = ({ wiring, layout, rest, parts, doubtedBefore }: Moment) => {
    const found = known.get(rest);
    if (found) return found;
    const { reach, open, doubted, sentences } = doubtsOf(wiring, rest, doubtedBefore);
    const view = {
      ...pointStates(wiring, layout, rest.point, { isUnknown: reach.isUnknown, open }),
      parts: withUndecided(parts, undecidedParts(wiring, reach, doubted)),
      doubts: sentences,
    };
    known.set(rest, { view, doubted });
    return { view, doubted };
  };

  const show = (now: Moment, refused: string | null): LiveState => {
    const { hands, seconds, rest, oscillating, steps, events } = now;
    const due = nextDue(rest.memory);
    return {
      when: whenOf(hands),
      seconds,
      nextIn: due === null ? null : tick(due - seconds),
      steps,
      events,
      ...viewOf(now).view,
      oscillating,
      refused,
    };
  };

  let moment = begin();
  let shown: LiveState | null = null;
  return {
    step(step) {
      const next = after(moment, step);
      if (typeof next === "string") shown = { ...(shown ?? show(moment, null)), refused: next };
      else {
        moment = next;
        shown = show(moment, null);
      }
      return shown;
    },
    state() {
      shown ??= show(moment, null);
      return shown;
    },
    reset() {
      moment = begin();
      shown = show(moment, null);
      return shown;
    },
    volts(red, black) {
      const { wiring } = moment;
      const a = wiring.probe(red);
      const b = wiring.probe(black);
      return a.ok && b.ok ? between(moment.rest.point, a.node, b.node) : null;
    },
  };
}

const sameHands = (a: Hands, b: Hands): boolean =>
  a.engine === b.engine &&
  a.unplugged === b.unplugged &&
  a.removed === b.removed &&
  sameSwitches(a.switches, b.switches);

function sameSwitches(a: Hands["switches"], b: Hands["switches"]): boolean {
  const ids = Object.keys(a);
  return ids.length === Object.keys(b).length && ids.every((id) => a[id] === b[id]);
}
