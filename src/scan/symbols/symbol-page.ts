import type { Point } from "../../base/index.ts";
import { type Component, type Components, componentsOf } from "../components.ts";
import { distancesToPaper, STEPS_PER_PIXEL } from "../distance.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { skeletonOf } from "../lines/skeleton.ts";
import { type Bits, bitsOf } from "../raster.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { thinning } from "../thinning.ts";
import { withLongerEnds } from "./longer-ends.ts";
import { bridged, type Piece, straightPieces } from "./straight-pieces.ts";

/** A page as symbols are looked for on it: coarser, so that a line is some two pixels wide. */
export interface SymbolPage {
  readonly width: number;
  readonly height: number;
  /** Pixels of the picture to a pixel here. */
  readonly coarseness: number;
  /** Width of the usual line, pixels here. */
  readonly line: number;
  readonly ink: Bits;
  readonly thinned: Bits;
  /** How far every pixel lies from the nearest thinned line, as `distanceToPaper` counts. */
  readonly near: Uint8Array;
  /** Straight strokes of lines, ... */
  readonly pieces: readonly Piece[];
  /** ... and of what is as small as a letter. */
  readonly glyphPieces: readonly Piece[];
  readonly components: Components;
  /** The ink as finely as the page has it, and its pixels to a pixel here. */
  readonly fine: { readonly ink: Bits; readonly by: number };
}

/** Lines are left at least this wide. */
const LEAST_LINE = 2;

export function* symbolPageOf(page: PreparedPage): Sliced<SymbolPage> {
  const by = Math.max(1, Math.floor(page.lineWidth / LEAST_LINE));
  const ink = by === 1 ? page.ink : yield* coarser(page.ink, by);
  yield 0.1;
  const bare = by === 1 ? page.thinned : yield* asPart(thinning(ink), 0.1, 0.35);
  yield 0.35;
  const thinned = withLongerEnds(bare, ink, page.lineWidth / by);
  yield 0.4;
  const { width, height } = ink;
  const blank = bitsOf(width, height);
  for (let at = 0; at < blank.data.length; at++) blank.data[at] = thinned.data[at] ? 0 : 1;
  yield 0.5;
  const near = yield* asPart(distancesToPaper(blank), 0.5, 0.6);
  const skeleton = yield* asPart(skeletonOf(thinned), 0.6, 0.9);
  yield 0.9;
  const line = page.lineWidth / by;
  const components = componentsOf(ink);
  yield 0.95;
  const pieces: Piece[] = [];
  const glyphPieces: Piece[] = [];
  for (const piece of straightPieces(skeleton, line)) {
    const label = labelNear({ width, height, components }, piece.from);
    const component = components.list[label - 1];
    (component && isGlyph(component, line) ? glyphPieces : pieces).push(piece);
  }
  pieces.push(...bridged(pieces, line));
  yield 1;
  const coarseness = by / page.scale;
  const strokes = { pieces, glyphPieces, components, fine: { ink: page.ink, by } };
  return { width, height, coarseness, line, ink, thinned, near, ...strokes };
}

/** Letters are no larger, in line widths, ... */
const GLYPH = 13;
/** ... and other than bars wider than this both ways. */
const BAR = 2.6;

/** Whether a piece of ink may be a letter or a digit: small, and no mere bar. */
function isGlyph({ left, top, right, bottom }: Component, line: number): boolean {
  const [width, height] = [right - left + 1, bottom - top + 1];
  return Math.max(width, height) < GLYPH * line && Math.min(width, height) > BAR * line;
}

/** The number of the piece of ink at a place, or a pixel or two beside it; 0 on paper. */
export function labelNear(
  { width, height, components }: Pick<SymbolPage, "width" | "height" | "components">,
  [x, y]: Point,
  reach = 1,
): number {
  const [px, py] = [Math.round(x), Math.round(y)];
  for (let ring = 0; ring <= reach; ring++) {
    for (let dy = -ring; dy <= ring; dy++) {
      for (let dx = -ring; dx <= ring; dx++) {
        const [tx, ty] = [px + dx, py + dy];
        if (tx < 0 || ty < 0 || tx >= width || ty >= height) continue;
        const label = components.labels[ty * width + tx] as number;
        if (label !== 0) return label;
      }
    }
  }
  return 0;
}

/** A pixel for every `by` times `by`: ink where any of them is, which also closes the finest breaks. */
function* coarser(ink: Bits, by: number): Sliced<Bits> {
  const out = bitsOf(Math.ceil(ink.width / by), Math.ceil(ink.height / by));
  for (let y = 0; y < ink.height; y++) {
    const row = Math.floor(y / by) * out.width;
    const from = y * ink.width;
    for (let x = 0, to = row; x < ink.width; to++) {
      for (const end = Math.min(ink.width, x + by); x < end; x++) {
        if (ink.data[from + x]) out.data[to] = 1;
      }
    }
    if (y % 256 === 255) yield (0.1 * y) / ink.height;
  }
  return out;
}

/** Pixels from a place to the nearest thinned line; far away outside of the page. */
export function nearest(page: SymbolPage, x: number, y: number): number {
  const px = Math.round(x);
  const py = Math.round(y);
  if (px < 0 || py < 0 || px >= page.width || py >= page.height) return 255 / STEPS_PER_PIXEL;
  return (page.near[py * page.width + px] as number) / STEPS_PER_PIXEL;
}

export function isInk(page: SymbolPage, x: number, y: number): boolean {
  const px = Math.round(x);
  const py = Math.round(y);
  if (px < 0 || py < 0 || px >= page.width || py >= page.height) return false;
  return page.ink.data[py * page.width + px] === 1;
}

/** From pixels here to pixels of the picture. */
export const toPicturePoint = ({ coarseness }: SymbolPage, [x, y]: Point): Point => [
  (x + 0.5) * coarseness - 0.5,
  (y + 0.5) * coarseness - 0.5,
];

/** From pixels of the picture to pixels here. */
export const fromPicturePoint = ({ coarseness }: SymbolPage, [x, y]: Point): Point => [
  (x + 0.5) / coarseness - 0.5,
  (y + 0.5) / coarseness - 0.5,
];
