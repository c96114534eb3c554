import {
  type CavityRef,
  type Colour,
  type Job,
  type Machine,
  ownerOf,
  type PinRef,
  type Plug,
  type Reading,
  type When,
} from "../../job/index.ts";
import { GHOST_SHARE, type JudgedReading, UNRELATED_OHMS } from "../../readings/index.ts";

/** All that is known of one plug on one machine. */
export interface Evidence {
  readonly job: Job;
  readonly machine: Machine;
  readonly plug: Plug;
  /** Valid readings with a probe at the plug, held against the drawing. */
  readonly readings: readonly { readonly reading: Reading; readonly judged: JudgedReading }[];
  /** All other valid readings of the machine. */
  readonly elsewhere: Evidence["readings"];
  /** Colours found at its cavities. */
  readonly colours: readonly { readonly mark: string; readonly colour: Colour }[];
  /** Pin that each cavity is tied to. */
  readonly pinAt: ReadonlyMap<string, PinRef>;
  /** Of the wires drawn at the pin that a cavity is tied to. */
  drawnColours(mark: string): readonly Colour[];
}

/** What a reading says of a prediction. */
export type Fit = "agrees" | "hangs-free" | "differs" | "no-word";

export function fitOf(job: Job, { value }: Reading, judged: JudgedReading): Fit {
  if (judged.verdict === "inside") return "agrees";
  if (judged.verdict === "outside") return "differs";
  if (!judged.floating || value === "OL") return "no-word";
  return Math.abs(value) > GHOST_SHARE * job.systemVoltage ? "differs" : "hangs-free";
}

/** Whether something is there that the prediction has not: more volts, volts the other way, a way of fewer ohms. */
export function isPresence(job: Job, { value, quantity }: Reading, judged: JudgedReading): boolean {
  if (value === "OL") return false;
  const { predicted, low, high } = judged;
  if (quantity === "ohms") {
    return value < UNRELATED_OHMS && (predicted === "OL" || (low !== null && value < low));
  }
  const small = GHOST_SHARE * job.systemVoltage;
  if (Math.abs(value) <= small) return false;
  if (low === null || high === null) return true;
  return Math.sign(value) > 0 ? value > high + small : value < low - small;
}

/** Whether what these pins belong to is off in a state, or the plug is: the loom alone is read then. */
export const isParted = (
  { plug }: Pick<Evidence, "plug">,
  pins: readonly PinRef[],
  { unplugged = [], removed = [] }: When,
): boolean => {
  const off = [...unplugged, ...removed];
  return off.includes(plug.id) || pins.every((pin) => off.includes(ownerOf(pin)));
};

export const cavitiesOf = (plug: Plug, { red, black }: Reading): readonly string[] => {
  const marks = (probe: CavityRef) =>
    probe.startsWith(`${plug.id}:`) ? [probe.slice(plug.id.length + 1)] : [];
  return [...marks(red), ...marks(black)];
};

export const isSameColour = (a: Colour, b: Colour): boolean =>
  a.base === b.base && (a.tracer ?? null) === (b.tracer ?? null);
