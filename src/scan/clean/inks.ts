import type { Rgba } from "../raster.ts";
import { inBands, type Sliced } from "../sliced.ts";

/** Inks told apart by hue; `other` is green, brown and whatever else has a colour. */
export type Ink = "black" | "red" | "blue" | "other";

/** In the order of their numbers in `InkClasses`, from 1; 0 is paper. */
export const INKS: readonly Ink[] = ["black", "red", "blue", "other"];

/** Of each pixel its ink: 0 paper, else one more than the ink's place in `INKS`. */
export interface InkClasses {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What the darkest of three colours must lose against white to be ink. */
const LEAST_DARKNESS = 32;
/** Ink is black where its weakest absorption is nearly its strongest. */
const LEAST_COLOUR = 0.3;
/** Degrees of hue, red 0, green 120, blue 240. Common practice, no source. */
const RED = [340, 25] as const;
const BLUE = [190, 275] as const;

/**
 * The ink of each pixel of a picture whose paper is white. What ink takes from white is the same in
 * its three parts at the soft edge of a line as in its middle, only less: their proportion tells the
 * ink. It is summed over the pixel and its eight neighbours, as cameras store colour more coarsely than
 * brightness.
 */
export function* inkClassesOf(picture: Rgba): Sliced<InkClasses> {
  const { width, height, data } = picture;
  const classes = { width, height, data: new Uint8Array(width * height) };
  yield* inBands(picture, (top, bottom) => {
    for (let y = top, at = top * width; y < bottom; y++) {
      const [above, below] = [Math.max(0, y - 1), Math.min(height - 1, y + 1)];
      for (let x = 0; x < width; x++, at++) {
        const [red, green] = [data[4 * at] as number, data[4 * at + 1] as number];
        const least = Math.min(red, green, data[4 * at + 2] as number);
        if (255 - least < LEAST_DARKNESS) continue;
        const [left, right] = [x > 0 ? x - 1 : 0, x < width - 1 ? x + 1 : x];
        classes.data[at] = classAround(data, width, left, above, right, below);
      }
    }
  });
  return classes;
}

function classAround(
  data: Uint8ClampedArray,
  width: number,
  left: number,
  top: number,
  right: number,
  bottom: number,
): number {
  let [red, green, blue] = [0, 0, 0];
  for (let y = top; y <= bottom; y++) {
    for (let x = left, at = 4 * (y * width + left); x <= right; x++, at += 4) {
      red += 255 - (data[at] as number);
      green += 255 - (data[at + 1] as number);
      blue += 255 - (data[at + 2] as number);
    }
  }
  const most = Math.max(red, green, blue);
  const least = Math.min(red, green, blue);
  if (most - least < LEAST_COLOUR * most) return 1;
  const hue = hueOf(-red, -green, -blue, most - least);
  if (hue >= RED[0] || hue <= RED[1]) return 2;
  return hue >= BLUE[0] && hue <= BLUE[1] ? 3 : 4;
}

/** Hue in degrees, 0 to 360, as of any colour: only differences count. */
function hueOf(red: number, green: number, blue: number, span: number): number {
  if (red >= green && red >= blue) return (60 * (green - blue)) / span + (green < blue ? 360 : 0);
  return green >= blue ? 120 + (60 * (blue - red)) / span : 240 + (60 * (red - green)) / span;
}

/** A layer with nothing but some inks, their own colours on white. */
export function* layerOf(picture: Rgba, classes: InkClasses, keep: readonly Ink[]): Sliced<Rgba> {
  const layer: Rgba = { ...picture, data: picture.data.slice() };
  yield* eraseInks(layer, classes, keep);
  return layer;
}

/** In place: every ink but some made white, with the soft edges that are too faint to have a class. */
export function* eraseInks(picture: Rgba, classes: InkClasses, keep: readonly Ink[]): Sliced<void> {
  const { width, height, data } = picture;
  const isKept = Uint8Array.from([0, ...INKS.map((ink) => (keep.includes(ink) ? 1 : 0))]);
  // A pixel to the right, so that the row's ends need no care.
  const nearKept = new Uint8Array(width + 2);
  yield* inBands(picture, (top, bottom) => {
    for (let y = top, at = top * width; y < bottom; y++) {
      nearKept.fill(0);
      for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
        for (let x = 0, from = row * width; x < width; x++, from++) {
          if (isKept[classes.data[from] as number]) {
            nearKept[x] = nearKept[x + 1] = nearKept[x + 2] = 1;
          }
        }
      }
      for (let x = 0; x < width; x++, at++) {
        const own = classes.data[at] as number;
        if (own === 0 ? nearKept[x + 1] : isKept[own]) continue;
        data[4 * at] = data[4 * at + 1] = data[4 * at + 2] = 255;
      }
    }
  });
}
