import type { Point } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** Pixels of thinned line, in line widths, by which the way of its end is told. */
const BACK = 2.5;
/** Line widths that an end may be drawn on; slanting strokes are eaten most. */
const MOST = 2;
const MOST_SLANTING = 12;
/** Share of a way along each axis from which it slants. */
const SLANTING = 0.5;

/**
 * Thinned lines drawn on to where their ink ends, but for half a line's width: thinning eats free ends,
 * and a symbol's bars would seem shorter than they are printed.
 */
export function* withLongerEnds(thinned: Bits, ink: Bits, line: number): Sliced<Bits> {
  const { width, height } = thinned;
  const data = thinned.data.slice();
  const back = Math.max(3, Math.round(BACK * line));
  const around = [-width - 1, -width, -width + 1, 1, width + 1, width, width - 1, -1];
  const lengthen = (x: number, y: number) => {
    const end = y * width + x;
    const at = isEnd(thinned, around, end) ? wayBack(thinned, around, end, back) : null;
    if (at === null) return;
    const [dx, dy] = [x - (at % width), y - Math.floor(at / width)];
    const length = Math.hypot(dx, dy);
    const [ux, uy] = [dx / length, dy / length];
    const isSlanting = Math.min(Math.abs(ux), Math.abs(uy)) > SLANTING;
    const most = (isSlanting ? MOST_SLANTING : MOST) * line;
    const drawn = onwards(ink, [x, y], [ux, uy], most, line);
    const kept = drawn.length - Math.floor(line / 2);
    for (const [px, py] of drawn.slice(0, Math.max(0, kept))) data[py * width + px] = 1;
  };
  yield* inBands(thinned, (top, bottom) => {
    for (let y = Math.max(1, top); y < Math.min(height - 1, bottom); y++) {
      const row = y * width;
      for (let x = 1; x < width - 1; x++) if (thinned.data[row + x]) lengthen(x, y);
    }
  });
  return { width, height, data };
}

/** Whether a line comes to a pixel from one side only: slanting lines are stairs, two pixels wide. */
function isEnd({ data }: Bits, around: readonly number[], at: number): boolean {
  let [count, runs] = [0, 0];
  for (let n = 0; n < around.length; n++) {
    if (!data[at + (around[n] as number)]) continue;
    count++;
    if (!data[at + (around[(n + 1) % around.length] as number)]) runs++;
  }
  return runs === 1 && count <= 2;
}

/** The pixel so many steps back along a line from its end; null where it forks or is as short as a speck. */
function wayBack(
  { data, width }: Bits,
  around: readonly number[],
  end: number,
  back: number,
): number | null {
  const seen = new Set([end]);
  let ring = [end];
  let steps = 0;
  while (steps < back) {
    const next: number[] = [];
    for (const at of ring) {
      for (const step of around) {
        const to = at + step;
        if (!data[to] || seen.has(to)) continue;
        seen.add(to);
        next.push(to);
      }
    }
    if (next.length === 0 || next.some((at) => !isBeside(at, next[0] as number, width))) break;
    ring = next;
    steps++;
  }
  return steps < 2 ? null : (ring[0] as number);
}

const isBeside = (a: number, b: number, width: number): boolean =>
  Math.abs((a % width) - (b % width)) <= 1 &&
  Math.abs(Math.floor(a / width) - Math.floor(b / width)) <= 1;

/** Whole pixels from a place on along a way, in the middle of the ink, for as long as there is any. */
function onwards(
  { data, width, height }: Bits,
  from: Point,
  way: Point,
  most: number,
  line: number,
): Point[] {
  const isInk = (x: number, y: number) => {
    const [px, py] = [Math.round(x), Math.round(y)];
    return px >= 1 && py >= 1 && px < width - 1 && py < height - 1 && data[py * width + px] === 1;
  };
  const found: Point[] = [];
  let [x, y] = from;
  let [ux, uy] = way;
  const aside = (sign: number) => {
    let far = 0;
    while (far < line && isInk(x - sign * uy * (far + 1), y + sign * ux * (far + 1))) far++;
    return far;
  };
  while (found.length < most) {
    [x, y] = [x + ux, y + uy];
    if (!isInk(x, y)) break;
    const shift = Math.max(-STEER, Math.min(STEER, (aside(1) - aside(-1)) / 4));
    [x, y] = [x - uy * shift, y + ux * shift];
    [ux, uy] = [ux - uy * shift * 0.5, uy + ux * shift * 0.5];
    const length = Math.hypot(ux, uy);
    [ux, uy] = [ux / length, uy / length];
    found.push([Math.round(x), Math.round(y)]);
  }
  return found;
}

/** Pixels aside to a pixel onwards, at most, by which the middle of the ink is sought. */
const STEER = 0.35;
