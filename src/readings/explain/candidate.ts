import { type Branch, type FaultMode, type Law, SHORT_OHMS } from "../../circuit/index.ts";
import type { Id, PinRef, Probe } from "../../job/index.ts";
import { WEIGHT_OF_MODE, weightOf } from "./priors.ts";
import type { Harm } from "./trial-fault.ts";

/** A fault worth trying for one reading. */
export interface Candidate {
  readonly mode: FaultMode;
  /** Its name while it is partial: a bad joint for an open, a leak for a short. Null where it is all or nothing. */
  readonly partly: FaultMode | null;
  readonly members: readonly Id[];
  readonly between: readonly [PinRef | Probe, PinRef | Probe] | null;
  readonly to: PinRef | Probe | null;
  /** The relay that it works by, where it is not on the way itself. */
  readonly by: Id | null;
  readonly law: Law["is"] | null;
  readonly harm: Harm;
  /** The same with these ohms where it touches; null where it is no touching. */
  readonly through: ((ohms: number) => Harm) | null;
  /** What the meter would show if the touched line took on the volts of what it touches; null where that says nothing. */
  readonly pinned: number | null;
  readonly likelihood: number;
}

/** Whether it may matter that two nodes touch. */
export type Touches = (a: number, b: number) => boolean;

const joined = (a: number, b: number, ohms = SHORT_OHMS): Branch => ({
  a,
  b,
  owner: null,
  element: null,
  acts: { is: "ohmic", ohms, low: ohms, high: ohms },
  gate: null,
  closedIn: null,
});

/** Two points that touch, as far as a candidate goes by that. */
export const touch = (a: number, b: number) => ({
  harm: { opens: [], adds: [joined(a, b)] },
  through: (ohms: number): Harm => ({ opens: [], adds: [joined(a, b, ohms)] }),
  pinned: null,
});

export const NO_TOUCH = { through: null, pinned: null } as const;

/** Weight of several things that may each have failed so. */
export const likelihoodOf = (laws: readonly (Law["is"] | null)[], mode: FaultMode): number =>
  Math.max(...laws.map(weightOf)) * WEIGHT_OF_MODE[mode] * (1 + 0.1 * (laws.length - 1));
