import type { Part, PinId } from "../../job/index.ts";
import type { Element, ElementFate } from "../kinds/index.ts";
import type { Branch, Decider, Draw, Lowered, Unknown } from "./branch.ts";
import { type Conditions, lower } from "./lower.ts";
import { placeBranch, placeDecider } from "./placing.ts";
import { strike } from "./strike.ts";

/** All that one part is to the solver, between numbered nodes. */
export interface LaidPart {
  readonly branches: readonly Branch[];
  readonly deciders: readonly Decider[];
  readonly unknowns: readonly Unknown[];
  readonly draws: readonly Draw[];
}

/** Where a part is laid, and what befell it. */
export interface Place {
  readonly conditions: Conditions;
  fatesOf(element: Element): readonly ElementFate[] | undefined;
  /** Node of a pin, or of a point inside the part. */
  at(pin: PinId): number;
  /** What levels count from where a module's own ground says nothing. */
  readonly chassis: readonly number[];
}

export function laidIn(
  part: Part,
  elements: readonly Element[],
  { conditions, fatesOf, at, chassis }: Place,
): LaidPart {
  const branches: Branch[] = [];
  const deciders: Decider[] = [];
  const unknowns: Unknown[] = [];
  const draws: Draw[] = [];
  for (const element of elements) {
    const fates = fatesOf(element);
    const healthy = lowered(part, element, conditions);
    const found = fates ? strike(healthy, element, fates) : healthy;
    for (const branch of found.branches) branches.push(placeBranch(branch, at));
    for (const decider of found.deciders) deciders.push(placeDecider(decider, at, chassis));
    for (const draw of found.draws ?? []) draws.push({ ...draw, nodes: draw.nodes.map(at) });
    for (const unknown of found.unknowns)
      unknowns.push({ ...unknown, nodes: unknown.nodes.map(at) });
  }
  const unsaid = unsaidPins(part);
  if (unsaid) unknowns.push({ ...unsaid, nodes: unsaid.nodes.map(at) });
  const draw = unsaidDraw(part);
  if (draw) draws.push({ ...draw, nodes: draw.nodes.map(at) });
  return { branches, deciders, unknowns, draws };
}

interface Known {
  readonly conditions: Conditions;
  readonly lowered: Lowered;
}

/** By how joints count: what an element was made into last. An edit leaves most elements the same objects. */
const known = { ideal: new WeakMap<Element, Known>(), real: new WeakMap<Element, Known>() };

function lowered(part: Part, element: Element, conditions: Conditions): Lowered {
  const kept = known[conditions.joints];
  const before = kept.get(element);
  if (before && isSame(before.conditions, conditions)) return before.lowered;
  const found = lower(part, element, conditions);
  kept.set(element, { conditions, lowered: found });
  return found;
}

const isSame = (a: Conditions, b: Conditions): boolean =>
  a === b ||
  (a.systemVoltage === b.systemVoltage && a.engine === b.engine && a.charging === b.charging);

/** A module of which nobody has said what it draws may draw this, A (common practice, no source). */
const MODULE_AMPS = 2;

/** What a module draws through its feeds, where its behaviour is declared without. */
function unsaidDraw(part: Part): Draw<PinId> | null {
  if (part.kind !== "module" || !part.behaviour || !part.power) return null;
  if (part.behaviour.loads?.length) return null;
  const nodes = [...part.power.supply, ...part.power.ground];
  return { part: part.id, nodes, what: `what ${part.id} draws`, most: MODULE_AMPS };
}

/** Pins of an active part whose doings nobody has declared. */
function unsaidPins(part: Part): Unknown<PinId> | null {
  if (part.kind === "module" && !part.behaviour) {
    return { part: part.id, nodes: part.pins.map((pin) => pin.id), what: `what ${part.id} does` };
  }
  if (part.kind === "sensor") {
    return { part: part.id, nodes: ["+", "-", "S"], what: `what ${part.id} senses` };
  }
  return null;
}
