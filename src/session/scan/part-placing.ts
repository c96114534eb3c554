import { add, type Point, scale, subtract, turn } from "../../base/index.ts";
import type { Id, Job, Part, PartKindName } from "../../job/index.ts";
import type { SymbolProposal } from "../../scan/index.ts";
import { draftPart, idSource } from "../diagram/draft.ts";
import { addPart } from "../diagram/new-part.ts";

/** A place on the picture that the user accepts as a part of this kind. */
export interface AcceptedPart {
  readonly kind: PartKindName;
  readonly proposal: SymbolProposal;
}

/** Symbols whose sizes differ by no more than this share were drawn to one size. */
const SAME_SIZE = 0.16;
/** The drawn middle of what is printed, symbol units from the part's own point, where that is not the same. */
const MIDDLES: Partial<Record<PartKindName, Point>> = { ground: [0, 1.8] };

const tenths = (value: number): number => Math.round(value * 10) / 10;

/**
 * Adds the accepted parts to a sheet, named in reading order, each so large that its drawing covers the
 * printed one. Returns their ids, in the order given.
 */
export function placeProposals(draft: Job, sheet: Id, accepted: readonly AcceptedPart[]): Id[] {
  const nextId = idSource(draft);
  const usual = usualUnit(accepted.map(({ proposal }) => proposal));
  const ids = new Map<AcceptedPart, Id>();
  for (const one of inReadingOrder(accepted)) {
    const { kind, proposal } = one;
    const unit = unitIn(one, usual);
    const id = addPart(draft, kind, sheet, placeOf(one, unit), proposal.turn, nextId);
    const part = draftPart(draft, id);
    if (part) forgetUsualValues(part);
    // A splice is as large a dot as the sheet's symbols have.
    if (part && kind !== "splice") {
      part.unit = Math.round(unit * 100) / 100;
      fill(part, proposal, usual);
    }
    ids.set(one, id);
  }
  return accepted.map((one) => ids.get(one) as Id);
}

/** Fields that say what is printed beside a symbol; each may be absent. */
const VALUES = [
  "amps",
  "watts",
  "ohms",
  "ohmsMin",
  "ohmsMax",
  "coilOhms",
  "volts",
  "outVolts",
] as const;

/** Nobody has read a value yet: a usual one would stand there as if it were printed. */
function forgetUsualValues(part: Part): void {
  const fields = part as Partial<Record<(typeof VALUES)[number], unknown>>;
  for (const name of VALUES) delete fields[name];
}

function unitIn({ proposal }: AcceptedPart, usual: number): number {
  // So large a plug's pins lie on their lines.
  if (proposal.ways !== undefined && proposal.ways > 1) return proposal.unit;
  return Math.abs(proposal.unit / usual - 1) <= SAME_SIZE ? usual : proposal.unit;
}

/** Modules and dots have no size of their own, and the bars of a ground tell it least surely. */
const SIZELESS: ReadonlySet<SymbolProposal["kind"]> = new Set(["module", "ground", "splice"]);

/** The middle one of the sizes that symbols are drawn in, pixels a unit. */
function usualUnit(proposals: readonly SymbolProposal[]): number {
  const symbols = proposals.filter(({ kind }) => !SIZELESS.has(kind));
  const units = (symbols.length > 0 ? symbols : proposals)
    .map(({ unit }) => unit)
    .sort((a, b) => a - b);
  return units[Math.floor(units.length / 2)] ?? 1;
}

/** Where the part's own point comes to lie, so that what is drawn lies about what is printed. */
function placeOf({ kind, proposal }: AcceptedPart, unit: number): Point {
  const { box, at } = proposal;
  const own = MIDDLES[kind];
  if (kind === proposal.kind) {
    const moved = own ? add(at, scale(turn(own, proposal.turn), proposal.unit - unit)) : at;
    return [tenths(moved[0]), tenths(moved[1])];
  }
  const middle: Point = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const there = own ? subtract(middle, scale(turn(own, proposal.turn), unit)) : middle;
  return [tenths(there[0]), tenths(there[1])];
}

/** What of the part's fields the picture says. */
function fill(
  part: Part,
  { box, at, pins, ends, ways, isClosed }: SymbolProposal,
  usual: number,
): void {
  if (part.kind === "module" && pins) {
    part.unit = Math.round(usual * 100) / 100;
    part.size = [tenths(box.right - box.left), tenths(box.bottom - box.top)];
    part.pins = pins.map((pin, n) => ({
      id: String(n + 1),
      at: onEdge(subtract(pin.at, at), pin.side, part.size as readonly [number, number]),
    }));
  }
  if (part.kind === "inline") {
    part.pins = Array.from({ length: ways ?? 1 }, (_, n) => ({ id: String(n + 1) }));
  }
  if (part.kind !== "switch") return;
  if (ends.length === 3) {
    part.positions = ["off", "1", "2"];
    part.rest = "off";
    part.contacts = [
      { between: ["1", "2"], closedIn: ["1"] },
      { between: ["1", "3"], closedIn: ["2"] },
    ];
  } else if (isClosed) part.rest = part.positions.find((one) => one !== part.rest) ?? "on";
}

function onEdge(
  [x, y]: Point,
  side: NonNullable<SymbolProposal["pins"]>[number]["side"],
  [width, height]: readonly [number, number],
): [number, number] {
  switch (side) {
    case "left":
      return [-width / 2, tenths(y)];
    case "right":
      return [width / 2, tenths(y)];
    case "top":
      return [tenths(x), -height / 2];
    case "bottom":
      return [tenths(x), height / 2];
  }
}

/** Things whose middles are this near in height, in units, stand in one row. */
const ROW = 6;

function inReadingOrder(accepted: readonly AcceptedPart[]): AcceptedPart[] {
  const row = ({ proposal: { at, unit } }: AcceptedPart) => Math.round(at[1] / (ROW * unit));
  return [...accepted].sort((a, b) => row(a) - row(b) || a.proposal.at[0] - b.proposal.at[0]);
}
