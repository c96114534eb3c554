import { formatQuantity } from "../../base/index.ts";
import type { LineState, PartState, PlayEvent, PointState } from "../../circuit/index.ts";
import type { Id, Part, PartKindName, Step } from "../../job/index.ts";

/** How a point lies, in the words of the legend. */
export const LINE_WORDS: Readonly<Record<LineState, string>> = {
  live: "live",
  "live-through-load": "live through a load",
  between: "part way",
  "ground-through-load": "ground through a load",
  ground: "ground",
  floating: "floating",
  unknown: "can’t tell",
};

/** A meter on a wire tied to nothing shows something all the same. */
const GHOST = "floating: a meter may show a ghost voltage";

/** Volts as a meter would show them, without the noise below its last digit. */
export function voltsWords(volts: number): string {
  const shown = Math.abs(volts) < 0.005 ? 0 : volts;
  return `${shown.toFixed(Math.abs(shown) < 9.995 ? 2 : 1).replace("-", "−")} V`;
}

/** Three digits, as much as the drawing's values are worth. */
export const ampsWords = (amps: number): string =>
  formatQuantity(Number(Math.abs(amps).toPrecision(3)), "amps");

/** What a probe held there would find, against chassis. */
export function pointWords(point: PointState): string {
  if (point.state === "floating") return GHOST;
  if (point.state === "unknown") return LINE_WORDS.unknown;
  return point.volts === null
    ? LINE_WORDS[point.state]
    : `${LINE_WORDS[point.state]}, ${voltsWords(point.volts)} against chassis`;
}

/** The same beside the word for how the point lies: what else there is to say. */
export function besidesLine({ state, volts }: PointState): readonly string[] {
  if (state === "floating") return ["a meter may show a ghost voltage"];
  return state === "unknown" || volts === null ? [] : [`${voltsWords(volts)} against chassis`];
}

/** Below this a wire carries nothing worth an arrow, A. */
export const LEAST_AMPS = 0.0005;

/** What a part does when it is on, by kind; all others are just on. */
const ON_WORDS: Readonly<Partial<Record<PartKindName, readonly [on: string, off: string]>>> = {
  lamp: ["lit", "dark"],
  motor: ["running", "still"],
  solenoid: ["on", "off"],
  heater: ["hot", "cold"],
  horn: ["sounding", "silent"],
  relay: ["pulled in", "at rest"],
  module: ["powered", "not powered"],
  fuse: ["good", "good"],
  breaker: ["closed", "closed"],
};

/** What one sees of a kind of part that is on, and of one that is off. */
export const onWords = (kind: PartKindName): readonly [on: string, off: string] =>
  ON_WORDS[kind] ?? ["on", "off"];

/** A part as it is now, e.g. `pulled in`, `blown`, `unplugged`; empty where there is nothing to say. */
export function partWords(part: Part, state: PartState | undefined): string {
  if (!state) return "";
  if (state.unplugged) return "unplugged";
  if (state.removed) return "taken out";
  if (state.blown) return "blown";
  if (state.oscillates) return "chatters";
  if (state.position !== undefined) return state.position;
  if (state.undecided) return LINE_WORDS.unknown;
  if (!(part.kind in ON_WORDS)) return "";
  // A module that says nothing of its feed can't be said to be without one.
  if (part.kind === "module" && !part.power) return "";
  return onWords(part.kind)[state.on ? 0 : 1];
}

export const secondsWords = (seconds: number): string =>
  `${Number(seconds.toFixed(seconds < 10 ? 2 : 1))} s`;

/** A step as somebody would tell it. */
export function stepWords(step: Step): string {
  switch (step.do) {
    case "turn":
      return `${step.switch} to ${step.position}`;
    case "release":
      return `Let go of ${step.switch}`;
    case "wait":
      return `Wait ${secondsWords(step.seconds)}`;
    case "unplug":
      return `Unplug ${step.id}`;
    case "plug":
      return `Plug in ${step.id}`;
    case "remove":
      return `Take out ${step.id}`;
    case "fit":
      return `Put ${step.id} back`;
    case "engine":
      return `Engine ${step.engine}`;
  }
}

/** What relays or modules do that never come to rest, without a full stop. */
export const chatterWords = (ids: readonly Id[]): string =>
  `${ids.join(", ")} chatter${ids.length === 1 ? "s" : ""}: each pull undoes what caused it`;

type Blew = Extract<PlayEvent, { what: "blew" }>;

/** What blew a fuse: `at 21.4 A, drawn by M1`. */
export function overloadWords({ amps, drawnBy }: Blew): string {
  const by = drawnBy.length > 0 ? `, drawn by ${drawnBy.join(", ")}` : "";
  return `at ${ampsWords(amps)}${by}`;
}

/** What happened, one sentence without its time. */
export function eventWords(event: PlayEvent, parts: ReadonlyMap<Id, Part>): string {
  const named = (id: Id) => {
    const label = parts.get(id)?.label;
    return label ? `${id} ${label}` : id;
  };
  switch (event.what) {
    case "pulled-in":
      return `${named(event.part)} pulls in`;
    case "dropped-out":
      return `${named(event.part)} drops out`;
    case "powered":
      return `${named(event.part)} wakes`;
    case "unpowered":
      return `${named(event.part)} goes dead`;
    case "path-closed":
      return `${event.part} closes between its pins ${event.between.join(" and ")}`;
    case "path-opened":
      return `${event.part} opens between its pins ${event.between.join(" and ")}`;
    case "on":
    case "off": {
      const kind = parts.get(event.part)?.kind;
      const [on, off] = kind ? onWords(kind) : ["on", "off"];
      return `${named(event.part)}: ${event.what === "on" ? on : off}`;
    }
    case "blew":
      return `${named(event.part)} blows ${overloadWords(event)}`;
    case "oscillates":
      return chatterWords(event.parts);
  }
}

/** When it happened, seconds since the play began. */
export const momentWords = (seconds: number): string =>
  `${seconds.toFixed(seconds < 100 ? 2 : 1)} s`;
