import type { FaultMode, Law } from "./kind.ts";

/** Ω that a bad joint, a burnt contact or a corroded wire adds (common practice, no source). */
export const EXTRA_OHMS = 10;
/** Ω of a leak through moisture or dirt (common practice, no source). */
export const LEAK_OHMS = 10_000;

/** What becomes of an element of a part. */
export type ElementFate =
  /** It conducts no more. */
  | "open"
  /** Its two ends are one point. */
  | "joined"
  /** `EXTRA_OHMS` in series. */
  | "extra-ohms"
  /** `LEAK_OHMS` across it, whether it is open or not. */
  | "leak"
  /** A relay's armature stays where it lies without current in the coil. */
  | "held-rested"
  /** A relay's armature stays where current in the coil would hold it. */
  | "held-pulled"
  /** A source gives nothing (what it is while not live stays); a module's path never acts. */
  | "dead";

/** What becomes of a joint: a wire, or what ties a pin or a terminal to its wires. */
export type JointFate =
  /** The two sides part. On a splice the wires that meet there no longer touch one another. */
  | "open"
  /** `EXTRA_OHMS` between the two sides. */
  | "extra-ohms"
  /** Joined to the chassis. */
  | "to-ground"
  /** Joined to the battery's plus. */
  | "to-supply"
  /** Joined to a neighbour: a pin beside it, a cavity beside it, a wire of the same loom. */
  | "to-neighbour"
  /** `LEAK_OHMS` to a neighbour. */
  | "leak";

/** Whether each such element or pin fails by itself, each a fault of its own, or all at once. */
type Strikes = "one" | "all";

/**
 * One way in which a part fails, and what the circuit is then. `in` lists the laws of the elements
 * that it befalls; `every-pin` is the joint between each pin of the part and the wires there.
 */
export type Failure =
  | {
      readonly mode: FaultMode;
      readonly in: "every-element" | readonly Law["is"][];
      readonly strikes: Strikes;
      readonly becomes: ElementFate;
    }
  | {
      readonly mode: FaultMode;
      readonly in: "every-pin";
      readonly strikes: Strikes;
      readonly becomes: JointFate;
    };

/** One way in which a wire or a terminal fails. */
export interface JointFailure {
  readonly mode: FaultMode;
  readonly becomes: JointFate;
}

/** A wire breaks, corrodes, or chafes through on the frame, on a feed or on its neighbour. */
export const WIRE_FAILURES: readonly JointFailure[] = [
  { mode: "open", becomes: "open" },
  { mode: "high-resistance", becomes: "extra-ohms" },
  { mode: "grounded", becomes: "to-ground" },
  { mode: "shorted-to-supply", becomes: "to-supply" },
  { mode: "bridged", becomes: "to-neighbour" },
];

/** A terminal backs out, corrodes, touches what is beside it, or stands in water with it. */
export const TERMINAL_FAILURES: readonly JointFailure[] = [
  ...WIRE_FAILURES,
  { mode: "leaky", becomes: "leak" },
];

/** The ways of a winding or a filament: it breaks, shorts, or its joints go bad. */
export const LOAD_FAILURES: readonly Failure[] = [
  { mode: "open", in: "every-element", strikes: "one", becomes: "open" },
  { mode: "shorted", in: "every-element", strikes: "one", becomes: "joined" },
  { mode: "high-resistance", in: "every-element", strikes: "one", becomes: "extra-ohms" },
];

/** The insulation of a winding gives way to the iron that it sits on. */
export const GROUNDED_WINDING: Failure = {
  mode: "grounded",
  in: "every-pin",
  strikes: "one",
  becomes: "to-ground",
};
