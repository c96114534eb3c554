import type { Point } from "../../base/index.ts";
import { middleDarkness } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Zone } from "./zones.ts";

/** A branch so much fainter than full ink, and than the others of its fork, is no line ... */
const FAINT = 0.55;
const FAINTER = 0.65;
/** ... as far as it is looked at, in line widths. */
const NEAR = 5;

/** Which of the ways that leave a place is so faint that it may be a smear; null where none is. */
export function faintOne(
  page: PreparedPage,
  { at, radius }: Zone,
  ways: readonly (readonly Point[])[],
): number | null {
  const dark = ways.map((way) =>
    middleDarkness(page, at, way, radius, radius + NEAR * page.lineWidth),
  );
  const least = Math.min(...dark);
  const faint = dark.indexOf(least);
  const others = dark.filter((_, n) => n !== faint);
  return least < FAINT && least < FAINTER * Math.min(...others) ? faint : null;
}
