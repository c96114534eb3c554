import { type Grey, greyOf } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/** Middle darkness of a page, 0 to 255, from which its grain is as rough as the edges of its lines. */
const GRAINY = 14;
/** Of so many pixels one is looked at for that. */
const STRIDE = 7;

/** Whether a flattened page has so much grain that lines would be frayed by it. */
function isGrainy({ data }: Grey): boolean {
  const all = Math.ceil(data.length / STRIDE);
  const lightest = 255 - GRAINY;
  let [dark, left] = [0, all];
  for (let at = 0; at < data.length; at += STRIDE) {
    if ((data[at] as number) <= lightest) dark++;
    left--;
    // What is left can make no difference.
    if (2 * dark > all || 2 * (dark + left) <= all) break;
  }
  return 2 * dark > all;
}

/**
 * A flattened page without its grain: each pixel the mean of those around it, by 1, 2 and 1. A page that
 * has little grain stays as it is.
 */
export function* withoutGrain(flat: Grey): Sliced<Grey> {
  if (!isGrainy(flat)) return flat;
  const { width, height, data } = flat;
  const out = greyOf(width, height);
  const column = new Uint16Array(width);
  yield* inBands(flat, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      const row = y * width;
      const above = y > 0 ? row - width : row;
      const below = y < height - 1 ? row + width : row;
      for (let x = 0; x < width; x++) {
        column[x] =
          (data[above + x] as number) + 2 * (data[row + x] as number) + (data[below + x] as number);
      }
      for (let x = 0; x < width; x++) {
        const left = column[x > 0 ? x - 1 : x] as number;
        const right = column[x < width - 1 ? x + 1 : x] as number;
        out.data[row + x] = (left + 2 * (column[x] as number) + right + 8) >> 4;
      }
    }
  });
  return out;
}
