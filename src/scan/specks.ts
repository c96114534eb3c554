import type { Bits } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/**
 * Takes pieces of ink out of a picture that are neither wider nor higher than `size` pixels: dust. Works
 * on the picture itself, and needs no more memory than one such piece.
 */
export function* takeOutSpecks(ink: Bits, size: number): Sliced<void> {
  const { width, height, data } = ink;
  const most = Math.floor(size);
  yield* inBands(ink, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let x = 0, at = y * width; x < width; x++, at++) {
        // A piece is looked at from its first pixel only: nothing of it lies before or above that.
        if (!data[at] || (x > 0 && data[at - 1])) continue;
        if (y > 0 && isInkAbove(at, x)) continue;
        const piece = pieceWithin(x, y);
        if (piece) for (const pixel of piece) data[pixel] = 0;
      }
    }
  });

  function isInkAbove(at: number, x: number): boolean {
    const above = at - width;
    if (data[above]) return true;
    return (x > 0 && data[above - 1] === 1) || (x < width - 1 && data[above + 1] === 1);
  }

  /** All pixels of the piece that one belongs to; null where it is larger. */
  function pieceWithin(x: number, y: number): number[] | null {
    let [left, right, bottom] = [x, x, y];
    const piece = [y * width + x];
    const seen = new Set(piece);
    for (let n = 0; n < piece.length; n++) {
      const at = piece[n] as number;
      const [column, row] = [at % width, Math.floor(at / width)];
      left = Math.min(left, column);
      right = Math.max(right, column);
      bottom = Math.max(bottom, row);
      if (row < y || right - left >= most || bottom - y >= most) return null;
      for (let nextY = Math.max(0, row - 1); nextY <= Math.min(height - 1, row + 1); nextY++) {
        for (let next = Math.max(0, column - 1); next <= Math.min(width - 1, column + 1); next++) {
          const beside = nextY * width + next;
          if (!data[beside] || seen.has(beside)) continue;
          seen.add(beside);
          piece.push(beside);
        }
      }
    }
    return piece;
  }
}
