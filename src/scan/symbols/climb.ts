import type { Change, LoosePose } from "./loose-pose.ts";

export interface Climb {
  readonly loose: LoosePose;
  /** What is changed. */
  readonly changes: readonly Change[];
  /** Pixels by which the middle is moved, coarse to fine. */
  readonly steps: readonly number[];
  /** Whether the pose is still one that is looked for. */
  readonly mayBe: () => boolean;
  /** How well it lies as it is; anything lower where that is less than `toBeat`. */
  readonly markOf: (toBeat: number) => number;
}

/** Rounds by one step. */
const ROUNDS = 4;
/** Degrees. */
const TURN = 1;
/** A mark is better by this at least. */
const BETTER = 1e-4;
const NONE = -1;

/**
 * Changes a pose by ever finer steps, each time by what betters it most, as long as anything does. Poses
 * that are bettered by every change at once end up beside the place where they would fit best.
 */
export function climb({ loose, changes, steps, mayBe, markOf }: Climb): void {
  let best = markOf(NONE);
  for (const step of steps) {
    for (let round = 0; round < ROUNDS; round++) {
      let [found, foundBy]: [Change | null, number] = [null, 0];
      for (const change of changes) {
        for (const by of [sizeOf(change, step), -sizeOf(change, step)]) {
          loose.change(change, by);
          const there = mayBe() ? markOf(best) : NONE;
          loose.undo();
          if (there <= best + BETTER) continue;
          best = there;
          [found, foundBy] = [change, by];
        }
      }
      if (!found) break;
      loose.change(found, foundBy);
    }
  }
}

function sizeOf(change: Change, step: number): number {
  if (change === "askew") return TURN;
  // A step at the ends of a symbol of about two units either way.
  return change === "right" || change === "down" ? step : step / 2;
}
