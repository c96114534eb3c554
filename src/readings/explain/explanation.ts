import type { FaultMode } from "../../circuit/index.ts";
import type { Id, PinRef, Probe } from "../../job/index.ts";

/**
 * One spot where a single fault gives the reading: everything in it shows the same at these probes,
 * so that this reading can't tell its members apart.
 */
export interface FaultSpot {
  readonly mode: FaultMode;
  /** Parts and wires of the spot; any one of them may have failed. */
  readonly members: readonly Id[];
  /** The two pins that the spot lies between, or the one that it lies at. */
  readonly between: readonly [PinRef | Probe, PinRef | Probe] | null;
  /** What it touches, for a bridge. */
  readonly to: PinRef | Probe | null;
  /** What the meter shows with the fault in full, unit of the reading; null where nothing holds the point. */
  readonly inFull: number | "OL" | null;
  /** A part of the fault suffices: a joint gone bad and not open, a leak and no short. */
  readonly isPartial: boolean;
  /** Fuses that it blows. */
  readonly blows: readonly Id[];
  /** Relative weight, larger is likelier; see `priors.ts`. No probability. */
  readonly likelihood: number;
  /** In a mechanic's words, e.g. `an open between F1:2 and X1:1`. */
  readonly words: string;
}

/** Volts or amps that a reading could show with one fault anywhere, drawn with a generous pen. */
export interface Reach {
  readonly low: number;
  readonly high: number;
  /** Why nothing surely lies outside, end of "can't be told, for ..."; null where the limits hold. */
  readonly untold: string | null;
}

/** A reading off its prediction, tried against single faults. */
export interface Explanation {
  /**
   * `explained`: at least one spot gives it. `unnamed`: none of the spots tried does, but it lies
   * within what a fault could give. `contradicts`: no single fault can give it.
   */
  readonly verdict: "explained" | "unnamed" | "contradicts";
  /** The likeliest first. */
  readonly spots: readonly FaultSpot[];
  readonly reach: Reach | null;
  /** It is what the prediction would be with the two leads exchanged. */
  readonly isReversed: boolean;
}
