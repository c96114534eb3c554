import type { Rgba } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** In place: levels from `black` to `white` stretched over all there are. */
export function* stretchContrast(picture: Rgba, black: number, white: number): Sliced<void> {
  const span = Math.max(1, white - black);
  const level = Uint8ClampedArray.from(
    { length: 256 },
    (_, value) => ((value - black) * 255) / span,
  );
  const { width, data } = picture;
  yield* inBands(picture, (top, bottom) => {
    for (let at = 4 * top * width; at < 4 * bottom * width; at += 4) {
      data[at] = level[data[at] as number] as number;
      data[at + 1] = level[data[at + 1] as number] as number;
      data[at + 2] = level[data[at + 2] as number] as number;
    }
  });
}
