import type { CavityRef, PinRef, RoleName } from "../job/index.ts";

export type Verdict = "agrees" | "contradicted" | "unproven" | "undecided";

/** What printed word, circuit and meter each say of one module pin. A contract of the command line. */
export interface Role {
  readonly pin: PinRef;
  readonly cavity: CavityRef | null;
  readonly printed: string | null;
  /** What the printed word means; of several meanings the one that fits, else the first. */
  readonly printedRole: RoleName | "unrecognised" | null;
  /** What the circuit allows, never empty. */
  readonly fits: readonly RoleName[];
  /** The only member of `fits`, else `undecided`. */
  readonly circuitRole: RoleName | "undecided";
  readonly circuitSide: "high" | "low" | null;
  readonly meterRole: RoleName | null;
  readonly meterFits: readonly RoleName[];
  readonly verdict: Verdict;
  readonly meterVerdict: Verdict;
  /** Ids of parts and wires along the path that proves the role, from the pin outward. */
  readonly because: readonly string[];
  /** The walk in one sentence that a mechanic would say. */
  readonly sentence: string;
}
