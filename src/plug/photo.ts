import { distance, type Point } from "../base/index.ts";
import type { Cavity } from "../job/index.ts";
import { thousandth } from "./face.ts";
import { type MarkStyle, marksOf } from "./marks.ts";

/** How large the photo is: the distance of the first two cavities clicked, or the whole picture's width. */
export type PhotoScale =
  | { readonly by: "pitch"; readonly mm: number }
  | { readonly by: "width"; readonly mm: number; readonly pixels: number };

/** Null while it cannot be told: too few clicks, two on one spot, or a length that is not above 0. */
export function mmPerPixel(clicks: readonly Point[], scale: PhotoScale): number | null {
  const [first, second] = clicks;
  const pixels =
    scale.by === "width" ? scale.pixels : first && second ? distance(first, second) : 0;
  return scale.mm > 0 && pixels > 0 ? scale.mm / pixels : null;
}

/**
 * Cavities clicked on a photo, pixels, in the order of their marks. The picture's top left
 * becomes [0, 0]; null while the scale cannot be told.
 */
export function cavitiesFromPhotoClicks(
  clicks: readonly Point[],
  scale: PhotoScale,
  style: MarkStyle,
): { cavities: Cavity[]; mmPerPixel: number } | null {
  const factor = mmPerPixel(clicks, scale);
  if (factor === null) return null;
  const marks = marksOf(style, clicks.length);
  const cavities = clicks.map(
    ([x, y], index): Cavity => ({
      mark: marks[index] ?? "",
      at: [thousandth(x * factor), thousandth(y * factor)],
    }),
  );
  return { cavities, mmPerPixel: factor };
}
