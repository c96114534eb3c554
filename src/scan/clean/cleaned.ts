import { inking } from "../ink.ts";
import { type Bits, greying, type Rgba } from "../raster.ts";
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
  const { width, height, data } = picture;
  const copy = { width, height, data: new Uint8ClampedArray(data.length) };
  yield* asPart(
    inBands(picture, (top, bottom) => {
      copy.data.set(data.subarray(4 * top * width, 4 * bottom * width), 4 * top * width);
    }),
    0,
    0.05,
  );
  yield* asPart(clean(copy, steps), 0.05, 1);
  return copy;
}

/** As `cleaned`, in place: for a picture that nobody else has. */
export function* clean(out: Rgba, steps: readonly CleanStep[]): Sliced<void> {
  yield* asPart(onWhite(out), 0, 0);
  let isFlat: boolean = false;
  for (const [n, step] of steps.entries()) {
    const [from, to] = [n / steps.length, (n + 1) / steps.length];
    const isReady: boolean = isFlat || !REMOVES.has(step.does);
    if (!isReady) yield* asPart(flattenColours(out), from, (from + to) / 2);
    yield* asPart(take(out, step), isReady ? from : (from + to) / 2, to);
    isFlat ||= step.does === "flatten" || step.does === "black-and-white" || !isReady;
  }
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
      const grey = yield* asPart(greying(picture), 0, 0.1);
      const ink = yield* asPart(sauvola(grey, step.window, step.k), 0.1, 0.7);
      return yield* asPart(paint(picture, ink), 0.7, 1);
    }
    case "specks": {
      const ink = yield* asPart(inkFrom(picture), 0, 0.4);
      const specks = yield* asPart(specksOf(ink, step.largest), 0.4, 0.8);
      return yield* asPart(erase(picture, specks), 0.8, 1);
    }
    case "bleed-through": {
      const darkest = yield* asPart(darkestOf(picture), 0, 0.1);
      const faint = yield* asPart(bleedThroughOf(darkest, step.sure), 0.1, 0.8);
      return yield* asPart(erase(picture, faint), 0.8, 1);
    }
    case "inks": {
      const classes = yield* asPart(inkClassesOf(picture), 0, 0.6);
      return yield* asPart(eraseInks(picture, classes, step.keep), 0.6, 1);
    }
  }
}

/** In a function of its own: the greys are not kept beside the pieces of ink. */
function* inkFrom(picture: Rgba): Sliced<Bits> {
  return yield* asPart(inking(yield* asPart(greying(picture), 0, 0.3)), 0.3, 1);
}

/** On white paper, in place: what is see-through in a picture shows the paper. */
function* onWhite(picture: Rgba): Sliced<void> {
  const { width, data } = picture;
  yield* inBands(picture, (top, bottom) => {
    for (let at = 4 * top * width + 3; at < 4 * bottom * width; at += 4) {
      const opacity = data[at] as number;
      if (opacity === 255) continue;
      for (let c = at - 3; c < at; c++)
        data[c] = 255 + (((data[c] as number) - 255) * opacity) / 255;
      data[at] = 255;
    }
  });
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
