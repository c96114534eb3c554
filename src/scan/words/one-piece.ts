import type { Bits } from "../raster.ts";
import type { Along } from "./line-bands.ts";
import type { Stroke } from "./line-strokes.ts";

/** Pixels: no letter has more, and none reaches so far along a line. */
const MOST = 4000;
const REACH = 60;

/** Whether the ink of two strokes that come up to a line from one side hangs together on that side. */
export function areOnePiece(
  { data }: Bits,
  { length, count, along, across }: Along,
  one: Stroke,
  other: Stroke,
): boolean {
  const { side, row } = one;
  const [least, most] = [
    Math.max(0, Math.min(one.from, other.from) - REACH),
    Math.min(length - 1, Math.max(one.to, other.to) + REACH),
  ];
  const seen = new Set<number>();
  const open: (readonly [number, number])[] = [];
  const visit = (place: number, at: number) => {
    if (place < least || place > most || at < 0 || at >= count || side * (at - row) < 0) return;
    const pixel = place * along + at * across;
    if (!data[pixel] || seen.has(pixel)) return;
    seen.add(pixel);
    open.push([place, at]);
  };
  for (let place = one.from; place <= one.to; place++) visit(place, row);
  for (let next = open.pop(); next && seen.size < MOST; next = open.pop()) {
    const [place, at] = next;
    if (place >= other.from && place <= other.to && Math.abs(at - other.row) <= 1) return true;
    for (let dp = -1; dp <= 1; dp++) for (let dr = -1; dr <= 1; dr++) visit(place + dp, at + dr);
  }
  return false;
}
