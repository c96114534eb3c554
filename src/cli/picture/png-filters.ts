import { DamagedPicture } from "./damaged-picture.ts";

/**
 * Undoes the filter of one line of a PNG in place (ISO/IEC 15948, clause 9). `above` is the line over
 * it, already undone, all zeros for the first; `step` is the bytes of a whole pixel, at least 1.
 */
export function undoFilter(
  filter: number,
  line: Uint8Array,
  above: Uint8Array,
  step: number,
): void {
  const left = (at: number) => (at < step ? 0 : (line[at - step] as number));
  switch (filter) {
    case 0:
      return;
    case 1:
      for (let at = step; at < line.length; at++) {
        line[at] = (line[at] as number) + (line[at - step] as number);
      }
      return;
    case 2:
      for (let at = 0; at < line.length; at++) {
        line[at] = (line[at] as number) + (above[at] as number);
      }
      return;
    case 3:
      for (let at = 0; at < line.length; at++) {
        line[at] = (line[at] as number) + ((left(at) + (above[at] as number)) >> 1);
      }
      return;
    case 4:
      for (let at = 0; at < line.length; at++) {
        const corner = at < step ? 0 : (above[at - step] as number);
        line[at] = (line[at] as number) + paeth(left(at), above[at] as number, corner);
      }
      return;
    default:
      throw new DamagedPicture("a line of it is packed in a way that PNG does not have");
  }
}

/** Of the three neighbours the one nearest to left + above - corner. */
function paeth(left: number, above: number, corner: number): number {
  const toLeft = Math.abs(above - corner);
  const toAbove = Math.abs(left - corner);
  const toCorner = Math.abs(left + above - 2 * corner);
  if (toLeft <= toAbove && toLeft <= toCorner) return left;
  return toAbove <= toCorner ? above : corner;
}
