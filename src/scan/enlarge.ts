import { type Grey, greyOf } from "./raster.ts";

/** The same picture, so many times as fine, brightness between pixels in a straight line. */
export function enlarge({ width, height, data }: Grey, times: number): Grey {
  const out = greyOf(width * times, height * times);
  for (let y = 0; y < out.height; y++) {
    const [top, bottom, down] = between(y, times, height);
    for (let x = 0; x < out.width; x++) {
      const [left, right, across] = between(x, times, width);
      const upper =
        (data[top * width + left] as number) * (1 - across) +
        (data[top * width + right] as number) * across;
      const lower =
        (data[bottom * width + left] as number) * (1 - across) +
        (data[bottom * width + right] as number) * across;
      out.data[y * out.width + x] = upper * (1 - down) + lower * down + 0.5;
    }
  }
  return out;
}

/** The two pixels between whose middles a finer pixel's middle lies, and the share of the second. */
function between(at: number, times: number, count: number): [number, number, number] {
  const place = Math.max(0, Math.min(count - 1, (at + 0.5) / times - 0.5));
  const low = Math.floor(place);
  return [low, Math.min(count - 1, low + 1), place - low];
}
