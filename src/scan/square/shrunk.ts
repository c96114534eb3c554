import { type Grey, greyOf } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** A picture so many times as coarse, each pixel the mean of those it stands for. */
export function* shrunk({ width, height, data }: Grey, times: number): Sliced<Grey> {
  if (times <= 1) return { width, height, data };
  const out = greyOf(
    Math.max(1, Math.floor(width / times)),
    Math.max(1, Math.floor(height / times)),
  );
  const sums = new Uint32Array(out.width);
  const shrinkRow = (y: number) => {
    sums.fill(0);
    const bottom = Math.min(height, (y + 1) * times);
    for (let row = y * times; row < bottom; row++) {
      for (let x = 0, at = row * width; x < out.width; x++) {
        let sum = 0;
        const end = Math.min(at + times, (row + 1) * width);
        for (; at < end; at++) sum += data[at] as number;
        sums[x] = (sums[x] as number) + sum;
      }
    }
    const count = (bottom - y * times) * Math.min(times, width);
    for (let x = 0; x < out.width; x++) {
      out.data[y * out.width + x] = (sums[x] as number) / count + 0.5;
    }
  };
  // Bands of the picture's own rows: they are the work.
  yield* inBands({ width, height: out.height * times }, (top, bottom) => {
    for (let y = Math.ceil(top / times); y * times < bottom; y++) shrinkRow(y);
  });
  return out;
}
