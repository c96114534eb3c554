import type { Point } from "../../base/index.ts";
import { darkness } from "../lines/darkness.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type Matrix, placed } from "./pose.ts";
import { sampledOf } from "./sampled.ts";
import type { SymbolPage } from "./symbol-page.ts";

/**
 * From this tone on (`toneAlong`) nothing speaks against a symbol. What was right on drawn and copied pages had
 * 0.92 and more, hairlines of small pictures 0.81; stains, smears and words in a thin hand mostly less.
 */
const SURE_FROM = 0.8;
/** The same for one line at a joint, which is short: copies had 0.72 and more, a cup's ring 0.48. */
export const LINE_SURE_FROM = 0.7;
/** The most that may be said of what is paler, and of a stain. */
const PALE = 0.7;
const STAIN_TO = 0.6;
const STAIN = 0.45;
/** Of a line's places, the share that may be paler than what is told: breaks and thin spots of a print. */
const PALEST = 0.25;
/** How far beside a place its line's middle is looked for, line widths. */
const ASIDE = 0.5;

/** No find is surer than this where its ink is so dark. */
export const mostByTone = (tone: number, sureFrom = SURE_FROM): number =>
  tone >= sureFrom ? 1 : tone >= STAIN_TO ? PALE : STAIN;

/**
 * How dark the ink is along places of a prepared page, in its pixels: 0 paper, 1 the usual line. All but
 * the palest quarter of the places is as dark or darker.
 */
export function toneAlong(page: PreparedPage, places: readonly Point[]): number {
  const tones = places.map((at) => toneAt(page, at)).sort((one, other) => one - other);
  return tones[Math.floor(PALEST * tones.length)] ?? 1;
}

function toneAt(page: PreparedPage, [x, y]: Point): number {
  const step = ASIDE * page.lineWidth;
  let most = 0;
  for (let dy = -step; dy <= step; dy += step) {
    for (let dx = -step; dx <= step; dx += step) {
      most = Math.max(most, darkness(page, x + dx, y + dy));
    }
  }
  return most;
}

/** How dark the strokes of a symbol are that lies so on a page, as `toneAlong` says it. */
export function toneOf(
  prepared: PreparedPage,
  { fine: { by } }: SymbolPage,
  symbol: DrawnSymbol,
  matrix: Matrix,
): number {
  const { xs, ys } = sampledOf(symbol);
  const places = Array.from(xs, (x, n): Point => {
    const [px, py] = placed(matrix, [x, ys[n] as number]);
    return [(px + 0.5) * by - 0.5, (py + 0.5) * by - 0.5];
  });
  return toneAlong(prepared, places);
}
