import { add, scale } from "../../base/index.ts";
import type { PinRef } from "../../job/index.ts";
import type { WirePlan } from "./lay-wire.ts";
import { orthogonalCorners } from "./routing.ts";
import type { Scene } from "./scene.ts";

/** Symbol units that a wire which goes on runs out of its pin. */
export const RUN_OUT = 5;

/**
 * A wire at right angles between two pins of a sheet, for laying without a pointer. `to` null: it
 * goes on, not traced, a little way out of its pin. Null when a pin is not on the sheet.
 */
export function routedWire(
  scene: Scene,
  from: PinRef,
  to: PinRef | null,
  unit: number,
): WirePlan | null {
  const start = scene.pins.get(from);
  if (!start) return null;
  const base = { sheet: scene.sheet, from: { on: "pin", ref: from } as const };
  if (to === null) {
    const at = add(start.at, scale(start.out ?? [1, 0], RUN_OUT * unit));
    return { ...base, to: { on: "open", at }, corners: [] };
  }
  const end = scene.pins.get(to);
  return end
    ? { ...base, to: { on: "pin", ref: to }, corners: orthogonalCorners(start, end) }
    : null;
}
