import type { Point } from "../../base/index.ts";
import { type Component, type Components, components } from "../components.ts";
import { distancesToPaper, STEPS_PER_PIXEL } from "../distance.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { markedSkeleton, placesOf } from "../lines/skeleton.ts";
import { type Bits, bitsOf } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";
import { thinning } from "../thinning.ts";
import { bridged } from "./bridged-pieces.ts";
import { withLongerEnds } from "./longer-ends.ts";
import type { Piece } from "./piece.ts";
import { straightPieces } from "./straight-pieces.ts";

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
  /** All pixels of `thinned` that are line, row after row: their columns, and where each row's begin. */
  readonly places: { readonly xs: Int32Array; readonly rows: Int32Array };
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
  const ink = by === 1 ? page.ink : yield* asPart(coarser(page.ink, by), 0, 0.1);
  const bare = by === 1 ? page.thinned : yield* asPart(thinning(ink), 0.1, 0.35);
  const line = page.lineWidth / by;
  const thinned = yield* asPart(withLongerEnds(bare, ink, line), 0.35, 0.4);
  const near = yield* asPart(distancesToPaper(yield* asPart(inverse(thinned), 0.4, 0.5)), 0.5, 0.6);
  const places = yield* asPart(placesOf(thinned), 0.6, 0.65);
  const rows = rowsOf(thinned, places);
  const marked = { ...thinned, data: thinned.data.slice() };
  const skeleton = yield* asPart(markedSkeleton(marked, places), 0.65, 0.85);
  const { width, height } = ink;
  const found = yield* asPart(components(ink), 0.85, 0.88);
  const pieces: Piece[] = [];
  const glyphPieces: Piece[] = [];
  for (const piece of yield* asPart(straightPieces(skeleton, line), 0.88, 0.95)) {
    const label = labelNear({ width, height, components: found }, piece.from);
    const component = found.list[label - 1];
    (component && isGlyph(component, line) ? glyphPieces : pieces).push(piece);
  }
  yield 0.95;
  for (const piece of yield* asPart(bridged(pieces, line), 0.95, 1)) pieces.push(piece);
  const coarseness = by / page.scale;
  const strokes = { pieces, glyphPieces, components: found, fine: { ink: page.ink, by } };
  return { width, height, coarseness, line, ink, thinned, places: rows, near, ...strokes };
}

/** Paper where there was ink, and ink where there was paper. */
export function* inverse(bits: Bits): Sliced<Bits> {
  const out = bitsOf(bits.width, bits.height);
  yield* inBands(bits, (top, bottom) => {
    for (let at = top * bits.width, end = bottom * bits.width; at < end; at++) {
      out.data[at] = bits.data[at] ? 0 : 1;
    }
  });
  return out;
}

function rowsOf({ width, height }: Bits, places: Int32Array): SymbolPage["places"] {
  const rows = new Int32Array(height + 1);
  let y = 0;
  for (let n = 0; n < places.length; n++) {
    while ((y + 1) * width <= (places[n] as number)) rows[++y] = n;
  }
  while (y < height) rows[++y] = places.length;
  return { xs: places.map((at) => at % width), rows };
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

/** The number of the piece of ink at a place, or the nearest within so many pixels beside it; 0 on paper. */
export function labelNear(
  { width, height, components }: Pick<SymbolPage, "width" | "height" | "components">,
  [x, y]: Point,
  reach = 1,
): number {
  const [px, py] = [Math.round(x), Math.round(y)];
  const { labels } = components;
  for (let ring = 0; ring <= reach; ring++) {
    for (let dy = -ring; dy <= ring; dy++) {
      const ty = py + dy;
      if (ty < 0 || ty >= height) continue;
      // Within the ring's rows only its two ends are new.
      const step = Math.abs(dy) === ring ? 1 : 2 * ring;
      for (let dx = -ring; dx <= ring; dx += step) {
        const tx = px + dx;
        if (tx < 0 || tx >= width) continue;
        const label = labels[ty * width + tx] as number;
        if (label !== 0) return label;
      }
    }
  }
  return 0;
}

/** A pixel for every `by` times `by`: ink where any of them is, which also closes the finest breaks. */
function* coarser(ink: Bits, by: number): Sliced<Bits> {
  const out = bitsOf(Math.ceil(ink.width / by), Math.ceil(ink.height / by));
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      const row = Math.floor(y / by) * out.width;
      const from = y * ink.width;
      for (let x = 0, to = row; x < ink.width; to++) {
        for (const end = Math.min(ink.width, x + by); x < end; x++) {
          if (ink.data[from + x]) out.data[to] = 1;
        }
      }
    }
  });
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
