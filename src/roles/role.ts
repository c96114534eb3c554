import type { CavityRef, Id, PinRef, RoleName } from "../job/index.ts";

export type Verdict = "agrees" | "contradicted" | "unproven" | "undecided";

/** A role that readings have ruled out at a cavity. */
export interface RuledOut {
  readonly role: RoleName;
  /** Ids of the readings, in the machine's order. */
  readonly by: readonly Id[];
  /** What they show that this role can't give, one sentence. */
  readonly why: string;
}

/** What printed word, circuit and meter each say of one module pin. A contract of the command line. */
export interface Role {
  readonly pin: PinRef;
  readonly cavity: CavityRef | null;
  readonly printed: string | null;
  /** What the printed word means; of several meanings the one that fits, else the first. */
  readonly printedRole: RoleName | "unrecognised" | null;
  /** All that the printed word may mean; absent where it is one thing or none. */
  readonly printedMeanings?: readonly RoleName[];
  /** What the circuit allows, never empty. */
  readonly fits: readonly RoleName[];
  /** The only member of `fits`, else `undecided`. */
  readonly circuitRole: RoleName | "undecided";
  readonly circuitSide: "high" | "low" | null;
  readonly meterRole: RoleName | null;
  /** Roles that no reading rules out; all of them while nothing is proved. */
  readonly meterFits: readonly RoleName[];
  /** What the meter ruled out, and by which reading; absent while nothing is proved. */
  readonly meterRuledOut?: readonly RuledOut[];
  /** What the user took from the circuit in place of the printed word; absent: nothing. */
  readonly adopted?: RoleName;
  readonly verdict: Verdict;
  readonly meterVerdict: Verdict;
  /** Ids of parts and wires along the path that proves the role, from the pin outward. */
  readonly because: readonly string[];
  /** The walk in one sentence that a mechanic would say. */
  readonly sentence: string;
}
