import type { Joint } from "./joint.ts";

/** How full of ink the corners of a page's dots and of its crossings are, as `cornerInk` measures it. */
interface Yardstick {
  readonly dot: number;
  readonly crossing: number;
}

/** A line that jumps another leaves paper where two plain ones would have ink. */
const JUMP = -0.2;
/** So many of each a page must have. */
const ENOUGH = 2;
/** Of the way from crossings to dots: up to the first it is one of those, from the second one of these. */
const LIKE_CROSSING = 0.45;
const LIKE_DOT = 0.65;

/**
 * Dots of a page are drawn alike and come out alike, as its crossings do: where it has both, they tell
 * what a place is that may be either.
 */
export function heldAgainstPage(joints: readonly Joint[]): (joint: Joint) => Joint {
  const yardstick = yardstickOf(joints);
  return (joint) => {
    const { kind, corners } = joint;
    if (kind !== "doubtful" || corners === null || yardstick === null) return joint;
    const { dot, crossing } = yardstick;
    const like = (corners - crossing) / (dot - crossing);
    if (like >= LIKE_DOT) return { kind: "joined", corners };
    if (like <= LIKE_CROSSING) return { kind: "crossing", pairs: joint.pairs, corners };
    return joint;
  };
}

function yardstickOf(joints: readonly Joint[]): Yardstick | null {
  const cornersOf = (kind: Joint["kind"]) =>
    joints.flatMap((joint) => (joint.kind === kind ? (joint.corners ?? []) : []));
  const dots = cornersOf("joined");
  const crossings = cornersOf("crossing").filter((corners) => corners > JUMP);
  if (dots.length < ENOUGH || crossings.length < ENOUGH) return null;
  return { dot: meanOf(dots), crossing: meanOf(crossings) };
}

const meanOf = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0) / all.length;
