import { distance, type Point } from "../../../base/index.ts";
import {
  countOfFill,
  draggedOn,
  type Fill,
  type FillHint,
  type FillShape,
  fillOfDrag,
  hintOf,
  NO_HINT,
  type PhotoDot,
  pointsOfFill,
  withCount,
} from "../../../plug/index.ts";

/** What a drag over the photo does; a tap adds one cavity, or takes away the one touched. */
export type PhotoTool = FillShape | "remove" | "measure";

/** The cavities being put on a photo. Points are its pixels. */
export interface PhotoWork {
  readonly dots: readonly PhotoDot[];
  /** Dragged and still open to another count; put in by whatever is done next. */
  readonly pending: Fill | null;
  /** Whether the user chose the count of what is pending, so that a drag leaves it alone. */
  readonly chosen: boolean;
  /** The fill before, for its counts. */
  readonly last: Fill | null;
  readonly hint: FillHint;
  readonly past: readonly (readonly PhotoDot[])[];
  readonly future: readonly (readonly PhotoDot[])[];
}

export const workOn = (dots: readonly PhotoDot[]): PhotoWork => ({
  dots,
  pending: null,
  chosen: false,
  last: null,
  hint: NO_HINT,
  past: [],
  future: [],
});

/** One step that undo takes back. */
const step = (work: PhotoWork, dots: readonly PhotoDot[]): PhotoWork => ({
  ...work,
  dots,
  past: [...work.past, work.dots],
  future: [],
});

/** Every cavity there, those of the pending fill at the end as undo has not yet to know them. */
export const dotsOf = (work: PhotoWork): readonly PhotoDot[] =>
  work.pending ? [...work.dots, ...pointsOfFill(work.pending).map((at) => ({ at }))] : work.dots;

/** Puts the pending fill in, as one step. */
export function accepted(work: PhotoWork): PhotoWork {
  const { pending } = work;
  if (!pending) return work;
  return {
    ...step(work, dotsOf(work)),
    pending: null,
    chosen: false,
    last: pending,
    hint: hintOf(pending, work.hint),
  };
}

export const cancelled = (work: PhotoWork): PhotoWork => ({
  ...work,
  pending: null,
  chosen: false,
});

export function withDot(before: PhotoWork, at: Point): PhotoWork {
  const work = accepted(before);
  return step(work, [...work.dots, { at }]);
}

export function withoutDot(before: PhotoWork, index: number): PhotoWork {
  const work = accepted(before);
  return step(
    work,
    work.dots.filter((_, other) => other !== index),
  );
}

export function withMovedDot(before: PhotoWork, index: number, at: Point): PhotoWork {
  const work = accepted(before);
  return step(
    work,
    work.dots.map((dot, other) => (other === index ? { ...dot, at } : dot)),
  );
}

/** A drag begins another fill; the one before it is put in. */
export function withFill(before: PhotoWork, shape: FillShape, from: Point, to: Point): PhotoWork {
  const work = accepted(before);
  return {
    ...work,
    pending: fillOfDrag(shape, from, to, work.last, work.hint),
    chosen: false,
  };
}

export const filledTo = (work: PhotoWork, to: Point): PhotoWork =>
  work.pending ? { ...work, pending: draggedOn(work.pending, to, work.chosen, work.hint) } : work;

/** The pending fill as the user changed it in the fields. */
export const refilled = (work: PhotoWork, pending: Fill): PhotoWork => ({
  ...work,
  pending,
  chosen: true,
});

export const countedBy = (work: PhotoWork, by: number): PhotoWork =>
  work.pending ? refilled(work, withCount(work.pending, countOfFill(work.pending) + by)) : work;

/** Takes the last step back: a pending fill first. */
export function undone(work: PhotoWork): PhotoWork {
  if (work.pending) return cancelled(work);
  const dots = work.past.at(-1);
  if (!dots) return work;
  return { ...work, dots, past: work.past.slice(0, -1), future: [work.dots, ...work.future] };
}

export function redone(work: PhotoWork): PhotoWork {
  const [dots, ...future] = work.future;
  if (!dots || work.pending) return work;
  return { ...work, dots, past: [...work.past, work.dots], future };
}

/** The dot nearest to a point, no further than `reach` pixels of the photo; null when there is none. */
export function dotAt(dots: readonly PhotoDot[], at: Point, reach: number): number | null {
  let nearest: number | null = null;
  let least = reach;
  for (const [index, dot] of dots.entries()) {
    const apart = distance(dot.at, at);
    if (apart > least) continue;
    nearest = index;
    least = apart;
  }
  return nearest;
}
