import { type Grey, greyOf, type Rgba } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";
import { bowedShare } from "./bow.ts";
import { planOf, type Squaring, type SquaringPlan } from "./squaring.ts";

/**
 * The picture squared up at full resolution, every pixel between its four nearest in straight lines
 * (bilinear); white where the picture has nothing. Null where the corners are no page.
 */
export function* squareUp<P extends Grey | Rgba>(picture: P, squaring: Squaring): Sliced<P | null> {
  const plan = planOf(squaring, picture);
  return plan && (yield* warp(picture, plan));
}

export function* warp<P extends Grey | Rgba>(picture: P, plan: SquaringPlan): Sliced<P> {
  const { width, height } = plan;
  if (picture.data instanceof Uint8ClampedArray) {
    const out: Rgba = { width, height, data: new Uint8ClampedArray(4 * width * height) };
    yield* inBands(out, (top, bottom) => warpColours(picture as Rgba, out, plan, top, bottom));
    return out as P;
  }
  const out = greyOf(width, height);
  yield* inBands(out, (top, bottom) => warpGreys(picture as Grey, out, plan, top, bottom));
  return out as P;
}

/** Bilinear shares are counted in 256ths: a byte can't tell finer ones. */
const FINE = 256;

/**
 * Of each pixel of a row of the result its place in the picture, in 256ths of a pixel; -1 for one
 * outside. `xs` and `ys` are as long as the row.
 */
function placesOf(
  plan: SquaringPlan,
  source: Grey | Rgba,
  y: number,
  xs: Int32Array,
  ys: Int32Array,
) {
  const [a, b, c, d, e, f, g, h] = plan.toStraight;
  const { bow } = plan;
  const [mx, my] = bow?.middle ?? [0, 0];
  const k = bow ? bow.k / (bow.unit * bow.unit) : 0;
  const [right, bottom] = [source.width - 0.5, source.height - 0.5];
  const [lastX, lastY] = [source.width - 1, source.height - 1];
  for (let x = 0; x < xs.length; x++) {
    const w = 1 / (g * x + h * y + 1);
    let u = (a * x + b * y + c) * w;
    let v = (d * x + e * y + f) * w;
    if (k !== 0) {
      const share = bowedShare(k, (u - mx) * (u - mx) + (v - my) * (v - my));
      u = mx + (u - mx) * share;
      v = my + (v - my) * share;
    }
    // Half a 256th of grace: rounding must not lose the pixels at the edge.
    if (!(w > 0 && u > -0.502 && v > -0.502 && u < right + 0.002 && v < bottom + 0.002)) {
      xs[x] = -1;
      continue;
    }
    xs[x] = Math.min(Math.max(u, 0), lastX) * FINE + 0.5;
    ys[x] = Math.min(Math.max(v, 0), lastY) * FINE + 0.5;
  }
}

function warpGreys(source: Grey, out: Grey, plan: SquaringPlan, top: number, bottom: number): void {
  const { width, height, data } = source;
  const xs = new Int32Array(out.width);
  const ys = new Int32Array(out.width);
  for (let y = top, at = top * out.width; y < bottom; y++) {
    placesOf(plan, source, y, xs, ys);
    for (let x = 0; x < xs.length; x++, at++) {
      const fineX = xs[x] as number;
      if (fineX < 0) {
        out.data[at] = 255;
        continue;
      }
      const fineY = ys[x] as number;
      const [left, upper] = [fineX >> 8, fineY >> 8];
      const from = upper * width + left;
      const right = left + 1 < width ? 1 : 0;
      const lower = upper + 1 < height ? width : 0;
      const [east, south] = [fineX & 255, fineY & 255];
      const above = (data[from] as number) * (FINE - east) + (data[from + right] as number) * east;
      const below =
        (data[from + lower] as number) * (FINE - east) +
        (data[from + lower + right] as number) * east;
      out.data[at] = (above * (FINE - south) + below * south + 32768) >> 16;
    }
  }
}

/** As `warpGreys`, with two of a pixel's four bytes at once: each has 16 bits to itself. */
function warpColours(
  source: Rgba,
  out: Rgba,
  plan: SquaringPlan,
  top: number,
  bottom: number,
): void {
  const { width, height } = source;
  const [pixels, made] = [wordsOf(source), wordsOf(out)];
  const xs = new Int32Array(out.width);
  const ys = new Int32Array(out.width);
  for (let y = top, at = top * out.width; y < bottom; y++) {
    placesOf(plan, source, y, xs, ys);
    for (let x = 0; x < xs.length; x++, at++) {
      const fineX = xs[x] as number;
      if (fineX < 0) {
        made[at] = -1;
        continue;
      }
      const fineY = ys[x] as number;
      const [left, upper] = [fineX >> 8, fineY >> 8];
      const one = upper * width + left;
      const right = left + 1 < width ? 1 : 0;
      const lower = upper + 1 < height ? width : 0;
      const [east, south] = [fineX & 255, fineY & 255];
      const nw = pixels[one] as number;
      const ne = pixels[one + right] as number;
      const sw = pixels[one + lower] as number;
      const se = pixels[one + lower + right] as number;
      made[at] =
        pair(pair(nw, ne, east), pair(sw, se, east), south) |
        (pair(pair(nw >>> 8, ne >>> 8, east), pair(sw >>> 8, se >>> 8, east), south) << 8);
    }
  }
}

/** The first and third byte of a word on the way from those of one to those of another, in 256ths. */
const pair = (from: number, to: number, share: number): number =>
  ((Math.imul(from & 0xff00ff, FINE - share) + Math.imul(to & 0xff00ff, share) + 0x800080) >>> 8) &
  0xff00ff;

/** A picture's pixels as one number each; of one that lies askew in memory a copy, to read only. */
function wordsOf({ data }: Rgba): Int32Array {
  const bytes = data.byteOffset % 4 === 0 ? data : data.slice();
  return new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
}
