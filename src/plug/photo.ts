import { distance, type Point } from "../base/index.ts";
import type { Cavity, Plug } from "../job/index.ts";
import { thousandth } from "./face.ts";
import { type MarkStyle, marksOf } from "./marks.ts";

/**
 * How large the photo is: the distance of the first two cavities clicked, of any two points, the
 * whole picture's width, or what it was before.
 */
export type PhotoScale =
  | { readonly by: "pitch"; readonly mm: number }
  | { readonly by: "points"; readonly mm: number; readonly ends: readonly [Point, Point] | null }
  | { readonly by: "before"; readonly mmPerPixel: number }
  | { readonly by: "width"; readonly mm: number; readonly pixels: number };

/** Null while it cannot be told: too few clicks, two on one spot, or a length that is not above 0. */
export function mmPerPixel(clicks: readonly Point[], scale: PhotoScale): number | null {
  if (scale.by === "before") return scale.mmPerPixel;
  const pixels = pixelsOf(clicks, scale);
  return scale.mm > 0 && pixels > 0 ? scale.mm / pixels : null;
}

function pixelsOf(clicks: readonly Point[], scale: Exclude<PhotoScale, { by: "before" }>): number {
  if (scale.by === "width") return scale.pixels;
  const [first, second] = scale.by === "pitch" ? clicks : (scale.ends ?? []);
  return first && second ? distance(first, second) : 0;
}

/** A cavity put on a photo, pixels. One that was on the plug before keeps its mark. */
export interface PhotoDot {
  readonly at: Point;
  readonly mark?: string;
}

/** The marks of the dots in their order: those kept, and between them the next ones of the style. */
export function marksOfDots(dots: readonly PhotoDot[], style: MarkStyle): string[] {
  const kept = new Set(dots.flatMap(({ mark }) => (mark === undefined ? [] : [mark])));
  const free = marksOf(style, dots.length + kept.size).filter((mark) => !kept.has(mark));
  let next = 0;
  return dots.map(({ mark }) => mark ?? free[next++] ?? "");
}

/**
 * Cavities put on a photo, in the order of their marks. The picture's top left lies at `origin`,
 * millimetres; null while the scale cannot be told.
 */
export function cavitiesFromPhoto(
  dots: readonly PhotoDot[],
  scale: PhotoScale,
  style: MarkStyle,
  origin: Point = [0, 0],
): { cavities: Cavity[]; mmPerPixel: number } | null {
  const factor = mmPerPixel(
    dots.map((dot) => dot.at),
    scale,
  );
  if (factor === null) return null;
  const marks = marksOfDots(dots, style);
  const cavities = dots.map(
    ({ at: [x, y] }, index): Cavity => ({
      mark: marks[index] ?? "",
      at: [thousandth(origin[0] + x * factor), thousandth(origin[1] + y * factor)],
    }),
  );
  return { cavities, mmPerPixel: factor };
}

/** The cavities of a plug where they lie on its photo; none when it has no photo. */
export function dotsOnPhoto(plug: Pick<Plug, "cavities" | "photo">): PhotoDot[] {
  const { photo } = plug;
  if (!photo) return [];
  return plug.cavities.map(({ mark, at }) => ({
    mark,
    at: [(at[0] - photo.at[0]) / photo.mmPerPixel, (at[1] - photo.at[1]) / photo.mmPerPixel],
  }));
}
