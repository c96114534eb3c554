import {
  type Box,
  boundsOf,
  boxAt,
  distance,
  growBox,
  type Point,
  spatialGrid,
} from "../../../base/index.ts";
import type { Id, Job, PinId, PinRef } from "../../../job/index.ts";
import { type PartShape, shapeOf, unitOf } from "../../diagram/part-shape.ts";
import type { ReadWord } from "./read-word.ts";

/** How near a word lies to something, in heights of its letters; less is nearer. */
export interface Near<T> {
  readonly thing: T;
  readonly cost: number;
}

/** A straight piece of a wire. */
interface WirePiece {
  readonly wire: Id;
  readonly from: Point;
  readonly to: Point;
}

/** What a sheet has that words can belong to, in pixels of its picture. */
export interface WordPlaces {
  /** All parts of which anything lies in an area, and some others, in the order of the job. */
  readonly partsNear: (area: Box) => readonly PartShape[];
  /** The same for wires, those of one wire one after another. */
  readonly piecesNear: (area: Box) => readonly WirePiece[];
  /** Joints of lines of the picture at which no splice is drawn. */
  readonly joints: readonly Point[];
}

/** `joints`: of the lines that were followed on the sheet. */
export function placesOf(job: Job, sheet: Id, joints: readonly Point[]): WordPlaces {
  const parts = job.diagram.parts.filter((part) => part.sheet === sheet).map(shapeOf);
  const pins = new Map(
    parts.flatMap((shape) => shape.pins.map(({ ref, at }) => [ref, at] as const)),
  );
  const pieces = job.diagram.wires.flatMap(({ id, from, to, path }) => {
    const [start, end] = [pins.get(from), pins.get(to)];
    return start && end ? piecesOf(id, [start, ...(path ?? []), end]) : [];
  });
  const splices = parts.filter(({ part }) => part.kind === "splice");
  const isDrawn = (joint: Point) =>
    splices.some(({ part }) => distance(part.at, joint) <= AT_JOINT * unitOf(part));
  return {
    partsNear: lookUp(parts, ({ box }) => box),
    piecesNear: lookUp(pieces, ({ from, to }) => boundsOf([from, to]) as Box),
    joints: joints.filter((joint) => !isDrawn(joint)),
  };
}

const piecesOf = (wire: Id, line: readonly Point[]): WirePiece[] =>
  line.slice(1).map((to, n) => ({ wire, from: line[n] as Point, to }));

/** Edge of a cell of the grids, and what is lost in rounding where a part is turned; pixels. */
const CELL = 200;
const ROUNDING = 1;

/** By area what lies there, in the order of the list. */
function lookUp<T>(things: readonly T[], boxOf: (thing: T) => Box): (area: Box) => readonly T[] {
  const grid = spatialGrid(things.map(boxOf), CELL);
  return (area) =>
    grid
      .near(growBox(area, ROUNDING))
      .sort((a, b) => a - b)
      .map((n) => things[n] as T);
}

/** A splice so near to a joint is the joint's, in symbol units. */
const AT_JOINT = 1;

const middleOf = ({ left, top, right, bottom }: Box): Point => [
  (left + right) / 2,
  (top + bottom) / 2,
];

const isInside = (word: Box, box: Box): boolean => {
  const [x, y] = middleOf(word);
  return x > box.left && x < box.right && y > box.top && y < box.bottom;
};

/** Gap between two boxes, 0 where they overlap. */
function gapBetween(a: Box, b: Box): number {
  const across = Math.max(0, a.left - b.right, b.left - a.right);
  const down = Math.max(0, a.top - b.bottom, b.top - a.bottom);
  return Math.hypot(across, down);
}

/** The module that a word stands in. */
const homeOf = ({ partsNear }: WordPlaces, { box }: ReadWord): PartShape | undefined =>
  partsNear(box).find((shape) => shape.part.kind === "module" && isInside(box, shape.box));

/** Names stand so near to their part, in letter heights. */
const NAME_REACH = 5;

/** Parts that a word may name: those beside it, and the module that it stands in. */
export function nearParts(places: WordPlaces, word: ReadWord): Near<PartShape>[] {
  const home = homeOf(places, word);
  if (home) return [{ thing: home, cost: 0 }];
  return places.partsNear(growBox(word.box, NAME_REACH * word.tall)).flatMap((thing) => {
    const cost = gapBetween(word.box, thing.box) / word.tall;
    return cost <= NAME_REACH ? [{ thing, cost }] : [];
  });
}

/** Joints that a splice's name may stand at. */
export const nearJoints = ({ joints }: WordPlaces, word: ReadWord): Near<Point>[] =>
  joints.flatMap((thing) => {
    const cost = gapBetween(word.box, boxAt(thing, 0)) / word.tall;
    return cost <= NAME_REACH ? [{ thing, cost }] : [];
  });

/** Whether a word stands in a symbol that is no module, as the M of a motor does. */
export const isInSymbol = ({ partsNear }: WordPlaces, word: ReadWord): boolean =>
  partsNear(word.box).some(({ part, box }) => part.kind !== "module" && isInside(word.box, box));

const PIN_DEPTH = 3;
const MARK_REACH = 2.2;

/** Pins of the module that a word stands in, by how near they lie along its edge. */
export function pinsInside(places: WordPlaces, word: ReadWord): Near<PinRef>[] {
  const home = homeOf(places, word);
  if (!home) return [];
  const { box, tall, turn } = word;
  const [x, y] = middleOf(box);
  return home.pins.flatMap(({ ref, at, out }) => {
    if (!out) return [];
    const isSide = out[0] !== 0;
    // From the edge inwards to the word's nearest side, and along the edge to its middle.
    const depth = isSide
      ? out[0] < 0
        ? box.left - at[0]
        : at[0] - box.right
      : out[1] < 0
        ? box.top - at[1]
        : at[1] - box.bottom;
    const along = isSide ? Math.abs(y - at[1]) : Math.abs(x - at[0]);
    const half =
      (isSide === (turn === 0) ? tall : Math.max(box.right - box.left, box.bottom - box.top)) / 2;
    if (depth < -tall || depth > PIN_DEPTH * tall || along > Math.max(half, tall)) return [];
    return [{ thing: ref, cost: Math.max(0, depth) / tall + (2 * along) / tall }];
  });
}

/** Whether a part's pins bear what is printed beside them; those of other kinds are named by their kind. */
export const hasOwnMarks = ({ kind }: PartShape["part"]): boolean =>
  kind === "module" || kind === "switch" || kind === "inline";

/** Pins that a mark outside the symbol stands at. */
export function pinsBeside(
  { partsNear }: WordPlaces,
  word: ReadWord,
): Near<{ readonly part: PartShape["part"]; readonly pin: PinId; readonly ref: PinRef }>[] {
  return partsNear(growBox(word.box, MARK_REACH * word.tall)).flatMap(({ part, pins, box }) => {
    if (part.kind === "module" && isInside(word.box, box)) return [];
    return pins.flatMap(({ pin, ref, at }) => {
      const gap = gapBetween(word.box, boxAt(at, 0)) / word.tall;
      return gap <= MARK_REACH ? [{ thing: { part, pin, ref }, cost: gap }] : [];
    });
  });
}

/** How far a print lies from its wire, in letter heights. */
const PRINT_REACH = 1.8;
/** Level print beside an upright wire is the rarer way, and so is print under a line or to the right of one. */
const NOT_ALONG = 0.6;
const OTHER_SIDE = 0.15;
/** So much of a print lies along the piece of wire that it names. */
const ALONG = 0.5;

/** Wires that a print runs along or stands beside. */
export function nearWires({ piecesNear }: WordPlaces, word: ReadWord): Near<Id>[] {
  const { box, tall, turn } = word;
  const about = growBox(box, PRINT_REACH * tall);
  const best = new Map<Id, number>();
  for (const { wire, from, to } of piecesNear(about)) {
    if (
      Math.max(from[0], to[0]) < about.left ||
      Math.min(from[0], to[0]) > about.right ||
      Math.max(from[1], to[1]) < about.top ||
      Math.min(from[1], to[1]) > about.bottom
    )
      continue;
    const cost = costAlong(box, turn !== 0, from, to, tall);
    if (cost <= PRINT_REACH) best.set(wire, Math.min(cost, best.get(wire) ?? cost));
  }
  return [...best].map(([thing, cost]) => ({ thing, cost }));
}

function costAlong(box: Box, isUpright: boolean, a: Point, b: Point, tall: number): number {
  const isLevel = Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1]);
  const [x, y] = middleOf(box);
  if (isLevel) {
    if (isUpright) return Number.POSITIVE_INFINITY;
    const shared =
      Math.min(box.right, Math.max(a[0], b[0])) - Math.max(box.left, Math.min(a[0], b[0]));
    const length = Math.min(box.right - box.left, Math.abs(b[0] - a[0]));
    if (length <= 0 || shared < ALONG * length) return Number.POSITIVE_INFINITY;
    const line = a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
    const gap = Math.max(0, line - box.bottom, box.top - line) / tall;
    return gap + (box.top > line ? OTHER_SIDE : 0);
  }
  const line = a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]);
  const gap = Math.max(0, line - box.right, box.left - line) / tall;
  const shared =
    Math.min(box.bottom, Math.max(a[1], b[1])) - Math.max(box.top, Math.min(a[1], b[1]));
  const length = Math.min(box.bottom - box.top, Math.abs(b[1] - a[1]));
  if (length <= 0 || shared < ALONG * length) return Number.POSITIVE_INFINITY;
  return gap + (isUpright ? 0 : NOT_ALONG) + (box.left > line ? OTHER_SIDE : 0);
}
