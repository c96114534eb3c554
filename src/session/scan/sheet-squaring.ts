import type { Sheet, SheetSquaring } from "../../job/index.ts";
import {
  bowIn,
  type CleanStep,
  NOT_SQUARED,
  planOf,
  type Squaring,
  type SquaringPlan,
} from "../../scan/index.ts";

type Image = NonNullable<Sheet["image"]>;

/** The sheet's picture as it came; null where it has none. */
export const originalOf = (sheet: Sheet): Image | null => sheet.original ?? sheet.image ?? null;

/** How the sheet's picture was made from the one that came; not at all where that is the picture. */
export function squaringOf(sheet: Sheet): Squaring {
  const { original, corners, squaring = {} } = sheet;
  if (!original) return NOT_SQUARED;
  return {
    bow: squaring.bow ? bowIn(original.width, original.height, squaring.bow) : null,
    corners: corners ?? null,
    margin: squaring.margin ?? 0,
    level: squaring.level ?? 0,
    quarters: squaring.quarters ?? 0,
    isMirrored: squaring.mirrored ?? false,
    crop: squaring.crop ?? null,
  };
}

/** The steps of cleaning that the sheet's picture has behind it. */
export const cleaningOf = (sheet: Sheet): readonly CleanStep[] =>
  sheet.original ? (sheet.cleaning ?? []) : [];

/** From the sheet's picture to the one that came; null where there is none, or its corners are no page. */
export function planOfSheet(sheet: Sheet): SquaringPlan | null {
  const original = originalOf(sheet);
  return original && planOf(squaringOf(sheet), original);
}

/** A squaring as a job keeps it: what is not set is left out; null where nothing but corners is set. */
export function squaringFields(squaring: Squaring): SheetSquaring | null {
  const { bow, margin, level, quarters, isMirrored, crop } = squaring;
  const fields: SheetSquaring = {
    ...(bow ? { bow: bow.k } : {}),
    ...(margin > 0 ? { margin } : {}),
    ...(level === 0 ? {} : { level }),
    ...(quarters === 0 ? {} : { quarters }),
    ...(isMirrored ? { mirrored: true } : {}),
    ...(crop ? { crop: { ...crop } } : {}),
  };
  return Object.keys(fields).length > 0 ? fields : null;
}

/** Whether the picture stays as it came. */
export const isUnchanged = (squaring: Squaring, cleaning: readonly CleanStep[]): boolean =>
  cleaning.length === 0 && squaring.corners === null && squaringFields(squaring) === null;

/** The squaring with no more digits than anyone can see: what is kept and what is made are the same. */
export function rounded(squaring: Squaring): Squaring {
  const to = (value: number, digits: number) => Number(value.toFixed(digits));
  const { bow, corners, margin, level, crop } = squaring;
  return {
    ...squaring,
    bow: bow && to(bow.k, 6) !== 0 ? { ...bow, k: to(bow.k, 6) } : null,
    corners:
      corners && (corners.map(([x, y]) => [to(x, 2), to(y, 2)]) as unknown as typeof corners),
    margin: Math.round(margin),
    level: to(level, 2) || 0,
    crop: crop && {
      left: Math.round(crop.left),
      top: Math.round(crop.top),
      right: Math.round(crop.right),
      bottom: Math.round(crop.bottom),
    },
  };
}
