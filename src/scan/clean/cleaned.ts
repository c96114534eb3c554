import { inkOf } from "../ink.ts";
import { type Bits, greyFrom, type Rgba } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";
import { sauvola } from "./adaptive-threshold.ts";
import { bleedThroughOf, darkestOf } from "./bleed-through.ts";
import { stretchContrast } from "./contrast.ts";
import { flattenColours } from "./flat-colours.ts";
import { eraseInks, inkClassesOf } from "./inks.ts";
import { specksOf } from "./specks.ts";
import type { CleanStep } from "./step.ts";

/** The picture after some steps of cleaning, one after the other. The picture itself stays as it is. */
export function* cleaned(picture: Rgba, steps: readonly CleanStep[]): Sliced<Rgba> {
  const out = opaque(picture);
  let isFlat: boolean = false;
  for (const [n, step] of steps.entries()) {
    const [from, to] = [n / steps.length, (n + 1) / steps.length];
    const isReady: boolean = isFlat || !REMOVES.has(step.does);
    if (!isReady) yield* asPart(flattenColours(out), from, (from + to) / 2);
    yield* asPart(take(out, step), isReady ? from : (from + to) / 2, to);
    isFlat ||= step.does === "flatten" || step.does === "black-and-white" || !isReady;
  }
  return out;
}

/** Steps that make ink white: the paper around it must be white too, and is made so if need be. */
const REMOVES: ReadonlySet<CleanStep["does"]> = new Set(["specks", "bleed-through", "inks"]);

/** One step, in place. */
function* take(picture: Rgba, step: CleanStep): Sliced<void> {
  switch (step.does) {
    case "flatten":
      return yield* flattenColours(picture);
    case "contrast":
      return yield* stretchContrast(picture, step.black, step.white);
    case "black-and-white": {
      const ink = yield* asPart(sauvola(greyFrom(picture), step.window, step.k), 0, 0.7);
      return yield* asPart(paint(picture, ink), 0.7, 1);
    }
    case "specks": {
      const ink = inkOf(greyFrom(picture));
      yield 0.4;
      const specks = specksOf(ink, step.largest);
      yield 0.8;
      return yield* asPart(erase(picture, specks), 0.8, 1);
    }
    case "bleed-through": {
      const faint = bleedThroughOf(darkestOf(picture), step.sure);
      yield 0.8;
      return yield* asPart(erase(picture, faint), 0.8, 1);
    }
    case "inks": {
      const classes = yield* asPart(inkClassesOf(picture), 0, 0.6);
      return yield* asPart(eraseInks(picture, classes, step.keep), 0.6, 1);
    }
  }
}

/** A copy on white paper: what is see-through in a picture shows the paper. */
function opaque({ width, height, data }: Rgba): Rgba {
  const copy = data.slice();
  for (let at = 3; at < copy.length; at += 4) {
    const opacity = copy[at] as number;
    if (opacity === 255) continue;
    for (let c = at - 3; c < at; c++) copy[c] = 255 + (((copy[c] as number) - 255) * opacity) / 255;
    copy[at] = 255;
  }
  return { width, height, data: copy };
}

function* paint(picture: Rgba, ink: Bits): Sliced<void> {
  const { width, data } = picture;
  yield* inBands(picture, (top, bottom) => {
    for (let at = top * width; at < bottom * width; at++) {
      const value = ink.data[at] ? 0 : 255;
      data[4 * at] = data[4 * at + 1] = data[4 * at + 2] = value;
    }
  });
}

/** Makes some pieces white, and the pixel around them with their soft edge: ink that touches none. */
function* erase(picture: Rgba, pieces: Bits): Sliced<void> {
  const { width, height, data } = picture;
  yield* inBands(picture, (top, bottom) => {
    for (let y = top, at = top * width; y < bottom; y++) {
      for (let x = 0; x < width; x++, at++) {
        if (!pieces.data[at]) continue;
        for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
          for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
            const near = 4 * (row * width + column);
            data[near] = data[near + 1] = data[near + 2] = 255;
          }
        }
      }
    }
  });
}
