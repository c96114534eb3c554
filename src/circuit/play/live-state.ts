import type { CavityRef, Id, PinRef, Position, Step, When } from "../../job/index.ts";
import type { PlayEvent } from "./play-event.ts";

/**
 * How a point of the circuit lies at this moment. `live` and `ground`: joined to battery plus or to
 * chassis by nothing but wires and closed contacts. `through-load`: tied only through a load.
 * `between`: part way, as between two lamps in series. `floating`: tied to nothing, so that a
 * meter shows a ghost voltage. `unknown`: depends on something that nobody has said; what is joined
 * to a pole for sure stays `live` or `ground` even where that moves its volts.
 */
export type LineState =
  | "live"
  | "ground"
  | "live-through-load"
  | "ground-through-load"
  | "between"
  | "floating"
  | "unknown";

export interface PointState {
  readonly state: LineState;
  /**
   * Against chassis (battery minus where nothing joins the two); null while floating, and where it
   * depends on something that nobody has said.
   */
  readonly volts: number | null;
}

export interface WireFlow extends PointState {
  /** From the wire's `from` to its `to`; 0 where nothing flows. */
  readonly amps: number;
}

export interface PartState {
  /** A load that has enough volts to do its job; a relay pulled in; a module powered. */
  readonly on: boolean;
  /** Share of nominal volts across a load, 0 to about 1.2; 0 for all else. */
  readonly share: number;
  /** The largest current through any of its elements, A. */
  readonly amps: number;
  /** Of a switch: where it stands. */
  readonly position?: Position;
  readonly blown?: boolean;
  readonly unplugged?: boolean;
  readonly removed?: boolean;
  readonly oscillates?: boolean;
  /** Nobody can tell whether it is on: that depends on something unsaid. `on` is without it. */
  readonly undecided?: boolean;
}

/** A machine at one moment of a play: plain data, fit to cross to and from a worker. */
export interface LiveState {
  readonly when: When;
  /** Since the play began. */
  readonly seconds: number;
  /** Seconds until something happens by itself if nobody does anything; null when at rest. */
  readonly nextIn: number | null;
  /** All that was done since the play began, refused steps left out. */
  readonly steps: readonly Step[];
  /** All that happened since the play began. */
  readonly events: readonly PlayEvent[];
  readonly wires: Readonly<Record<Id, WireFlow>>;
  readonly pins: Readonly<Record<PinRef, PointState>>;
  /** Only those that a pin is matched to. */
  readonly cavities: Readonly<Record<CavityRef, PointState>>;
  readonly parts: Readonly<Record<Id, PartState>>;
  /** Relays and modules that chatter now. */
  readonly oscillating: readonly Id[];
  /** One sentence for each thing that nobody has said and much depends on. */
  readonly doubts: readonly string[];
  /** Why the last step could not be done, e.g. no such position; null otherwise. */
  readonly refused: string | null;
}
