import { type Bits, bitsOf, type Grey } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** Half the span of brightness: the largest deviation there can be. */
const LARGEST_DEVIATION = 128;

/**
 * Ink by a threshold of each pixel's own: T = m (1 + k (s / 128 - 1)), m and s the mean and standard
 * deviation in a square window around it, cut at the picture's edges (J. Sauvola and M. Pietikäinen,
 * "Adaptive document image binarization", Pattern Recognition 33(2), 2000). Sums of columns slide down and
 * the window's along them, which gives the sums of F. Shafait's integral images (2008) to the last
 * digit in the memory of a few rows.
 */
export function* sauvola(grey: Grey, window: number, k: number): Sliced<Bits> {
  const { width, height, data } = grey;
  const bits = bitsOf(width, height);
  const reach = Math.max(1, window >> 1);
  const sums = new Int32Array(width);
  const squares = new Int32Array(width);
  const addRow = (y: number, sign: 1 | -1) => {
    for (let x = 0, at = y * width; x < width; x++, at++) {
      const value = data[at] as number;
      sums[x] = (sums[x] as number) + sign * value;
      squares[x] = (squares[x] as number) + sign * value * value;
    }
  };
  for (let y = 0; y < Math.min(reach, height); y++) addRow(y, 1);
  yield* inBands(grey, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      if (y + reach < height) addRow(y + reach, 1);
      if (y - reach - 1 >= 0) addRow(y - reach - 1, -1);
      const rows = Math.min(height - 1, y + reach) - Math.max(0, y - reach) + 1;
      thresholdRow(grey, bits, y, rows, reach, k, sums, squares);
    }
  });
  return bits;
}

function thresholdRow(
  { width, data }: Grey,
  bits: Bits,
  y: number,
  rows: number,
  reach: number,
  k: number,
  sums: Int32Array,
  squares: Int32Array,
): void {
  let [sum, square, columns] = [0, 0, 0];
  for (let x = 0; x < Math.min(reach, width); x++, columns++) {
    sum += sums[x] as number;
    square += squares[x] as number;
  }
  for (let x = 0, at = y * width; x < width; x++, at++) {
    if (x + reach < width) {
      sum += sums[x + reach] as number;
      square += squares[x + reach] as number;
      columns++;
    }
    if (x > reach) {
      sum -= sums[x - reach - 1] as number;
      square -= squares[x - reach - 1] as number;
      columns--;
    }
    const [value, count] = [data[at] as number, rows * columns];
    // The threshold never lies above the mean.
    if (value * count > sum) continue;
    bits.data[at] = value <= sauvolaLevel(sum, square, count, k) ? 1 : 0;
  }
}

/** The threshold of a window from its sum, its sum of squares and its count of pixels. */
export function sauvolaLevel(sum: number, square: number, count: number, k: number): number {
  const mean = sum / count;
  const deviation = Math.sqrt(Math.max(0, square / count - mean * mean));
  return mean * (1 + k * (deviation / LARGEST_DEVIATION - 1));
}
