import { type Grey, greyOf } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/** The same picture, so many times as fine, brightness between pixels in a straight line. */
export function* enlarged({ width, height, data }: Grey, times: number): Sliced<Grey> {
  const out = greyOf(width * times, height * times);
  const columns = Array.from({ length: out.width }, (_, x) => between(x, times, width));
  const lefts = Int32Array.from(columns, ([left]) => left);
  const rights = Int32Array.from(columns, ([, right]) => right);
  const shares = Float64Array.from(columns, ([, , across]) => across);
  const line = (y: number) => {
    const [top, bottom, down] = between(y, times, height);
    for (let x = 0; x < out.width; x++) {
      const [left, right] = [lefts[x] as number, rights[x] as number];
      const across = shares[x] as number;
      const upper =
        (data[top * width + left] as number) * (1 - across) +
        (data[top * width + right] as number) * across;
      const lower =
        (data[bottom * width + left] as number) * (1 - across) +
        (data[bottom * width + right] as number) * across;
      out.data[y * out.width + x] = upper * (1 - down) + lower * down + 0.5;
    }
  };
  yield* inBands(out, (top, bottom) => {
    for (let y = top; y < bottom; y++) line(y);
  });
  return out;
}

/** The two pixels between whose middles a finer pixel's middle lies, and the share of the second. */
function between(at: number, times: number, count: number): [number, number, number] {
  const place = Math.max(0, Math.min(count - 1, (at + 0.5) / times - 0.5));
  const low = Math.floor(place);
  return [low, Math.min(count - 1, low + 1), place - low];
}
