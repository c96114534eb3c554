import type { Piece } from "./piece.ts";

const MOST = 6;
/** Lines this many line widths long say how the page lies. */
const LONG = 15;

/** How far the page's lines are turned from upright and level, degrees clockwise; the middle by length. */
export function askewOf(pieces: readonly Piece[], line: number): number {
  const turned = pieces
    .filter(({ length }) => length >= LONG * line)
    .map(({ from, to, length }) => {
      const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
      return { off: angle - 90 * Math.round(angle / 90), length };
    })
    .filter(({ off }) => Math.abs(off) <= MOST)
    .sort((a, b) => a.off - b.off);
  const all = turned.reduce((sum, { length }) => sum + length, 0);
  let seen = 0;
  for (const { off, length } of turned) {
    seen += length;
    if (2 * seen >= all) return off;
  }
  return 0;
}
