import type { Point } from "../../base/index.ts";
import type { Id, Job } from "../../job/index.ts";
import { draftWire, plain } from "./draft.ts";
import { nearestOnLine, withoutIdleCorners } from "./polyline.ts";
import { pointsOfWire, setPath } from "./split-wire.ts";

function change(draft: Job, id: Id, corners: (points: readonly Point[]) => readonly Point[]): void {
  const wire = draftWire(draft, id);
  const points = wire && pointsOfWire(plain(draft), plain(wire));
  if (wire && points) setPath(wire, corners(points));
}

/** Takes corner `index` of a wire (0 is the first after `from`) to `at`. */
export function moveCorner(draft: Job, id: Id, index: number, at: Point): void {
  change(draft, id, (points) =>
    points.slice(1, -1).map((corner, i): Point => (i === index ? at : corner)),
  );
}

/** Adds a corner where the wire is nearest to `at`. */
export function addCorner(draft: Job, id: Id, at: Point): void {
  change(draft, id, (points) => {
    const spot = nearestOnLine(points, at);
    const corners = points.slice(1, -1);
    if (spot) corners.splice(spot.segment, 0, spot.at);
    return corners;
  });
}

/** Takes out corner `index` of a wire. */
export function removeCorner(draft: Job, id: Id, index: number): void {
  change(draft, id, (points) => points.slice(1, -1).filter((_, i) => i !== index));
}

/** Takes out the corners that bend nothing. */
export function tidyCorners(draft: Job, id: Id): void {
  change(draft, id, (points) =>
    withoutIdleCorners(points[0] as Point, points.slice(1, -1), points.at(-1) as Point),
  );
}

/**
 * Pushes a segment of a wire sideways: one at right angles stays so, and the ends keep their pins
 * by a step. A slanting segment gets a corner at `from` that goes along.
 */
export function moveSegment(draft: Job, id: Id, segment: number, from: Point, to: Point): void {
  change(draft, id, (points) => segmentMoved(points, segment, from, to).slice(1, -1));
}

export function segmentMoved(
  points: readonly Point[],
  segment: number,
  from: Point,
  to: Point,
): Point[] {
  const run = [...points];
  const a = run[segment];
  const b = run[segment + 1];
  if (!a || !b) return run;
  const [across, down] = [Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])];
  // Traced over a scan that lies a degree askew, a line still counts as level or upright.
  const isLevel = down < 0.01 + 0.03 * across;
  if (!isLevel && across >= 0.01 + 0.03 * down) {
    run.splice(segment + 1, 0, to);
    return run;
  }
  const aside = (point: Point): Point =>
    isLevel ? [point[0], point[1] + to[1] - from[1]] : [point[0] + to[0] - from[0], point[1]];
  const moved = [aside(a), aside(b)];
  // A pin stays where it is: the segment leaves it by a step.
  const head = segment === 0 ? [a] : [];
  const tail = segment === points.length - 2 ? [b] : [];
  run.splice(segment, 2, ...head, ...moved, ...tail);
  return run;
}
