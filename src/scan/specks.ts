import { inkPixels } from "./ink-pixels.ts";
import type { Bits } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/**
 * Takes pieces of ink out of a picture that are neither wider nor higher than `size` pixels: dust. Works
 * on the picture itself, and needs no more memory than one such piece.
 */
export function* takeOutSpecks(ink: Bits, size: number): Sliced<void> {
  const { width, height, data } = ink;
  const most = Math.floor(size);
  const inkIn = inkPixels(ink);
  /** Places of the piece looked at, and which of those that it may have were met, row by row. */
  const piece: number[] = [];
  const across = 2 * most + 1;
  const met = new Uint8Array(across * (most + 1));
  let row = 0;
  const look = (at: number) => {
    const x = at - row * width;
    // A piece is looked at from its first pixel only: nothing of it lies before or above that.
    if (x > 0 && data[at - 1]) return;
    if (row > 0 && isInkAbove(at, x)) return;
    if (isWide(at, x) || isHigh(at)) return;
    if (isWithin(x, row)) for (const pixel of piece) data[pixel] = 0;
  };
  yield* inBands(ink, (top, bottom) => {
    for (row = top; row < bottom; row++) inkIn(row * width, (row + 1) * width, look);
  });

  function isInkAbove(at: number, x: number): boolean {
    const above = at - width;
    if (data[above]) return true;
    return (x > 0 && data[above - 1] === 1) || (x < width - 1 && data[above + 1] === 1);
  }

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
      const place = (line - y) * across + column - x + most;
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
