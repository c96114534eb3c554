import type { Cube, Step, Way } from "../circuit/index.ts";
import type { PinRef, RoleName } from "../job/index.ts";

/** One thing seen from a pin, looking out into the harness, with the roles that it allows. */
export interface Sighting {
  /** `neighbour`: nothing but a wire to another module, or to another pin of the same one. */
  readonly of: "feed" | "ground" | "part" | "neighbour" | "untraced";
  readonly roles: readonly RoleName[];
  /** Those of them that a module stated to be fed or grounded there adds. */
  readonly stated?: readonly RoleName[];
  readonly side: "high" | "low" | null;
  readonly cube: Cube;
  readonly trail: Trail;
}

/** The way to what was seen: walked stretches, with the loads that were passed between them. */
export interface Trail {
  readonly legs: readonly Leg[];
  /** Null where the last leg ends at nothing in particular. */
  readonly end: PinRef | null;
}

export interface Leg {
  readonly step: Step;
  /** The load passed after this stretch. */
  readonly through: Way | null;
}
