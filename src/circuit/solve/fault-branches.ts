import { type Id, ownerOf, type PinRef, pinRef } from "../../job/index.ts";
import { EXTRA_OHMS, LEAK_OHMS, pinsOf } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import type { Branch } from "./branch.ts";
import type { CavityPins } from "./cavity-pins.ts";
import type { Blows, JointBlow } from "./fault.ts";
import type { Points } from "./points.ts";

/** Ω of metal on metal where nothing should touch (common practice, no source). */
export const SHORT_OHMS = 0.01;

/** Ω that what befell a wire or a joint puts in series with it. */
export const seriesOhms = (blows: readonly JointBlow[]): number =>
  blows.filter(({ fate }) => fate === "extra-ohms").length * EXTRA_OHMS;

/** What the branches of failed joints are put among. */
export interface Place {
  readonly circuit: Circuit;
  readonly points: Points;
  own(ref: PinRef): number;
  readonly open: ReadonlySet<PinRef>;
  readonly chassis: number;
  readonly plus: number | null;
  readonly cavities: CavityPins;
  readonly endsAt: ReadonlyMap<PinRef, readonly string[]>;
}

/** Branches that failed wires and terminals add: to ground, to supply, to a neighbour, in series. */
export function bridge(place: Place, blows: Blows): readonly Branch[] {
  const { points } = place;
  const branches: Branch[] = [];
  const add = (owner: Id, a: number, b: number | null, ohms: number) => {
    if (b === null) return;
    const acts = { is: "ohmic", ohms, low: ohms, high: ohms } as const;
    branches.push({ a, b, owner, element: null, acts, gate: null, closedIn: null });
  };
  const befall = (owner: Id, at: number, { fate, to }: JointBlow, beside: number | null) => {
    const target = to === null ? beside : pointOf(place, to);
    if (fate === "to-ground") add(owner, at, place.chassis, SHORT_OHMS);
    else if (fate === "to-supply") add(owner, at, place.plus, SHORT_OHMS);
    else if (fate === "to-neighbour") add(owner, at, target, SHORT_OHMS);
    else if (fate === "leak") add(owner, at, target, LEAK_OHMS);
  };
  for (const wire of place.circuit.wires) {
    for (const blow of blows.wires.get(wire.id) ?? [])
      befall(wire.id, points.of(wire.from), blow, null);
  }
  for (const [ref, all] of blows.pins) {
    const owner = ownerOf(ref);
    const neighbour = neighbourOf(place.circuit, ref);
    for (const blow of all)
      befall(owner, points.of(ref), blow, neighbour === null ? null : points.of(neighbour));
    const ohms = seriesOhms(all);
    if (ohms === 0 || all.some(({ fate }) => fate === "open")) continue;
    const ends = place.endsAt.get(ref);
    if (!ends) add(owner, points.of(ref), place.own(ref), ohms);
    for (const end of ends ?? []) add(owner, points.of(end), place.own(ref), ohms);
  }
  return branches;
}

/** Where a pin, a cavity or a wire lies; null where there is no such thing. */
function pointOf({ points, cavities, circuit }: Place, ref: string): number | null {
  if (!ref.includes(":")) {
    const wire = circuit.wires.find(({ id }) => id === ref);
    return wire ? points.of(wire.from) : null;
  }
  return points.find(cavities.get(ref)?.[0] ?? ref);
}

/** The pin after this one on the same part, or the one before where it is the last. */
function neighbourOf(circuit: Circuit, ref: PinRef): PinRef | null {
  const part = circuit.parts.find(({ id }) => id === ownerOf(ref));
  if (!part) return null;
  const refs = pinsOf(part).map((pin) => pinRef(part.id, pin.id));
  const at = refs.indexOf(ref);
  return at < 0 ? null : (refs[at + 1] ?? refs[at - 1] ?? null);
}
