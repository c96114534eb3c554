import type { Branch } from "./branch.ts";
import type { Factored, Mesh } from "./star-mesh.ts";

/** Numbers that a branch has in one solution: nominal, or at an edge of what is healthy. */
export interface Setting {
  /** Ω; of a filament, hot. */
  readonly ohms: number;
  /** Of a filament; equal to `ohms` for all else. */
  readonly cold: number;
  /** Volts of a source or junction; 0 for all else. */
  readonly volts: number;
}

/** Node voltages of one state of the machine, contacts given, lamps and diodes consistent. */
export interface OperatingPoint {
  readonly factored: Factored;
  readonly mesh: Mesh;
  readonly volts: Float64Array;
  /** Ω that each branch has there; Infinity where it does not conduct. */
  readonly ohms: Float64Array;
  /** The inverse. */
  readonly siemens: Float64Array;
  /** Amps from `a` to `b` through each branch. */
  readonly amps: Float64Array;
  /** The only branches that could be kept from conducting. */
  readonly doubtful: readonly number[];
  /** Junctions that block here, and would conduct if what nobody knows were otherwise. */
  readonly blocked: readonly number[];
}

/** Nothing is less, so that no conductance is infinite. */
export const LEAST_OHMS = 1e-6;
/** A meter of 10 MΩ draws more than this from a tenth of a volt. */
export const NO_AMPS = 1e-9;

export function nominal(branch: Branch): Setting {
  const { acts } = branch;
  switch (acts.is) {
    case "ohmic":
      return { ohms: acts.ohms, cold: acts.ohms, volts: 0 };
    case "slide":
      return { ohms: acts.track / 2, cold: acts.track / 2, volts: 0 };
    case "filament":
      return { ohms: acts.hot, cold: acts.cold, volts: 0 };
    case "source":
    case "junction":
      return { ohms: acts.ohms, cold: acts.ohms, volts: acts.volts };
  }
}
