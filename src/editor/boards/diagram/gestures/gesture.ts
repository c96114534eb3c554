import { distance, type Point } from "../../../../base/index.ts";

/** A press of a pointer, with what a gesture needs to know of it. */
export interface Press {
  /** Pixels of the view. */
  readonly view: Point;
  /** Pixels of the sheet. */
  readonly sheet: Point;
  readonly touch: boolean;
  readonly shift: boolean;
  readonly clientX: number;
  readonly clientY: number;
}

/** What a pointer that is held down does until it is let go. */
export interface Gesture {
  readonly move?: (now: Press) => void;
  /** `dragged` tells whether the pointer left the spot it was pressed on. */
  readonly up?: (now: Press, dragged: boolean) => void;
  /** Escape, a second finger, or the system took the pointer away: nothing may be left behind. */
  readonly cancel?: () => void;
  /** True once somebody else follows the pointer: Escape is theirs then. */
  readonly handedOver?: () => boolean;
}

/** A pointer that strays less than this is held still, pixels of the view. */
const STILL = { mouse: 4, touch: 10 };

export const strayed = (from: Press, to: Press): boolean => strayedBy(STILL, from, to);

/** Whether a pointer has left its spot by more than what is allowed it, pixels of the view. */
export const strayedBy = (most: typeof STILL, from: Press, to: Press): boolean =>
  distance(from.view, to.view) > (from.touch ? most.touch : most.mouse);
