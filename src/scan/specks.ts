import type { Ink } from "./ink.ts";
import { lowestBit, take } from "./packed-bits.ts";
import { inBands, type Sliced } from "./sliced.ts";

/**
 * Takes pieces of ink out of a picture that are neither wider nor higher than `size` pixels: dust. Works
 * on the picture itself, and needs no more memory than one such piece.
 */
export function* takeOutSpecks({ bits, packed }: Ink, size: number): Sliced<void> {
  const { width, height, data } = bits;
  const { words, across } = packed;
  const most = Math.floor(size);
  /** Places of the piece looked at, and which of those that it may have were met, row by row. */
  const piece: number[] = [];
  const wide = 2 * most + 1;
  const met = new Uint8Array(wide * (most + 1));
  const look = (x: number, y: number) => {
    const at = y * width + x;
    if (!data[at] || isWide(at, x) || isHigh(at) || !isWithin(x, y)) return;
    for (const pixel of piece) {
      data[pixel] = 0;
      take(packed, pixel);
    }
  };
  // A piece is looked at from its first pixel only: nothing of it lies before or above that.
  yield* inBands(bits, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let column = 0, at = y * across; column < across; column++, at++) {
        const here = words[at] as number;
        if (here === 0) continue;
        const isFirst = column === 0;
        const before = isFirst ? 0 : (words[at - 1] as number) >>> 31;
        let first = here & ~((here << 1) | before);
        if (first !== 0 && y > 0) {
          const above = words[at - across] as number;
          const left = isFirst ? 0 : (words[at - across - 1] as number) >>> 31;
          const right = column === across - 1 ? 0 : (words[at - across + 1] as number) << 31;
          first &= ~(above | (above << 1) | left | (above >>> 1) | right);
        }
        for (; first !== 0; first &= first - 1) look((column << 5) + lowestBit(first), y);
      }
    }
  });

  /** Most ink is line, and seen not to be dust by its first row, or its first column. */
  function isWide(at: number, x: number): boolean {
    if (x + most >= width) return false;
    for (let n = 1; n <= most; n++) if (!data[at + n]) return false;
    return true;
  }

  function isHigh(at: number): boolean {
    for (let n = 1; n <= most; n++) if (!data[at + n * width]) return false;
    return true;
  }

  /** Gathers all pixels of the piece that one belongs to; false where it is larger. */
  function isWithin(x: number, y: number): boolean {
    let [left, right, bottom] = [x, x, y];
    piece.length = 0;
    met.fill(0);
    const meet = (column: number, line: number) => {
      const place = (line - y) * wide + column - x + most;
      if (met[place]) return;
      met[place] = 1;
      piece.push(line * width + column);
    };
    meet(x, y);
    for (let n = 0; n < piece.length; n++) {
      const at = piece[n] as number;
      const line = Math.floor(at / width);
      const column = at - line * width;
      left = Math.min(left, column);
      right = Math.max(right, column);
      bottom = Math.max(bottom, line);
      if (line < y || right - left >= most || bottom - y >= most) return false;
      const [first, last] = [Math.max(0, column - 1), Math.min(width - 1, column + 1)];
      const lowest = Math.min(height - 1, line + 1);
      for (let nextY = Math.max(0, line - 1); nextY <= lowest; nextY++) {
        for (let next = first; next <= last; next++) {
          if (!data[nextY * width + next]) continue;
          if (nextY < y) return false;
          meet(next, nextY);
        }
      }
    }
    return true;
  }
}
