import { add, type Point, scale, turn } from "../../base/index.ts";
import type { Part, PartKindName, PinId } from "../../job/index.ts";
import type { Element, PartKind, PinPlace, Stroke, Terminal } from "./kind.ts";

export type * from "./kind.ts";

/** Pixels of the squared picture per symbol unit where a part does not say. */
export const DEFAULT_UNIT = 10;

// biome-ignore lint/suspicious/noExplicitAny: a kind is looked up by the very part it is for
type AnyKind = PartKind<any>;

/** Every kind of part, in the order in which a palette shows them. */
export const KINDS: Readonly<Partial<Record<PartKindName, AnyKind>>> = {};

export function kindOf(kind: PartKindName): AnyKind {
  const found = KINDS[kind];
  if (!found) throw new Error(`no such kind: ${kind}`);
  return found;
}

export const pinsOf = (part: Part): readonly PinPlace[] => kindOf(part.kind).pins(part);

export const elementsOf = (part: Part, systemVoltage: number): readonly Element[] =>
  kindOf(part.kind).elements(part, systemVoltage);

export const terminalOf = (part: Part, pin: PinId): Terminal | null =>
  kindOf(part.kind).terminal?.(part, pin) ?? null;

export const strokesOf = (part: Part): readonly Stroke[] => kindOf(part.kind).draw(part);

/** From symbol units of `part` to pixels of its sheet. */
export function toSheet(part: Part, at: Point): Point {
  return add(part.at, turn(scale(at, part.unit ?? DEFAULT_UNIT), part.turn));
}

/** Where a pin lies on its sheet, pixels; null when the part has no such pin. */
export function pinPosition(part: Part, pin: PinId): Point | null {
  const place = pinsOf(part).find((candidate) => candidate.id === pin);
  return place ? toSheet(part, place.at) : null;
}
