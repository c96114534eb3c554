import type { Sight } from "../circuit/index.ts";
import type { PartOf, PinRef, RoleName } from "../job/index.ts";
import { inferRoles } from "./infer.ts";
import { type WalkWords, walkInWords } from "./sentence.ts";
import { trailIds } from "./trail.ts";

/** What the circuit says of one pin, whatever word is printed beside it and whatever it is tied to. */
export interface PinCircuit {
  readonly pin: PinRef;
  readonly fits: readonly RoleName[];
  readonly side: "high" | "low" | null;
  /** Ids of parts and wires along the path that proves it, from the pin outward. */
  readonly because: readonly string[];
  readonly walk: WalkWords;
}

/** What the circuit says of each pin of a module, in the module's order. */
export function moduleCircuit(sight: Sight, module: PartOf<"module">): readonly PinCircuit[] {
  const { explorer, pins } = inferRoles(sight, module);
  return pins.map((pin): PinCircuit => {
    const because = pin.trail ? trailIds(sight, pin.pin, pin.trail) : [];
    const { fits, side } = pin;
    return { pin: pin.pin, fits, side, because, walk: walkInWords(explorer, pin, because) };
  });
}
