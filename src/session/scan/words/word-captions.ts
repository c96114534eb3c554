import type { ReadWord } from "./read-word.ts";

/** Lines of a caption stand so near under one another, in letter heights. */
const LINE_GAP = 1.1;
/** And begin, have their middle or end so near in line. */
const IN_LINE = 0.7;
/** Words on one line with a wide gap between them. */
const SIDE_GAP = 2.2;

/** Whether `below` is the next line of the caption that `above` is a line of. */
export function isNextLine(above: ReadWord, below: ReadWord): boolean {
  if (above.turn !== 0 || below.turn !== 0) return false;
  const tall = Math.max(above.tall, below.tall);
  if (Math.min(above.tall, below.tall) < 0.55 * tall) return false;
  const gap = below.box.top - above.box.bottom;
  if (gap < -0.3 * tall || gap > LINE_GAP * tall) return false;
  const middle = ({ left, right }: ReadWord["box"]) => (left + right) / 2;
  return (
    Math.min(
      Math.abs(above.box.left - below.box.left),
      Math.abs(above.box.right - below.box.right),
      Math.abs(middle(above.box) - middle(below.box)),
    ) <=
    IN_LINE * tall
  );
}

/** Whether `right` goes on the same line as `left`. */
export function isBeside(left: ReadWord, right: ReadWord): boolean {
  if (left.turn !== 0 || right.turn !== 0) return false;
  const tall = Math.max(left.tall, right.tall);
  const gap = right.box.left - left.box.right;
  const aside = Math.abs(left.box.top + left.box.bottom - right.box.top - right.box.bottom) / 2;
  return gap > 0 && gap <= SIDE_GAP * tall && aside <= 0.3 * tall;
}
