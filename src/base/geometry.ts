/** A point or a displacement: x to the right, y down. Pixels on a sheet, millimetres on a plug face. */
export type Point = readonly [x: number, y: number];

/** An axis-aligned box: left, top, right, bottom. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];

export const subtract = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];

export const scale = (p: Point, factor: number): Point => [p[0] * factor, p[1] * factor];

export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Turns `p` about the origin by `degrees` clockwise (y points down). */
export function turn(p: Point, degrees: number): Point {
  const quarter = ((degrees % 360) + 360) % 360;
  if (quarter === 0) return p;
  if (quarter === 90) return [-p[1], p[0]];
  if (quarter === 180) return [-p[0], -p[1]];
  if (quarter === 270) return [p[1], -p[0]];
  const angle = (degrees * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [p[0] * cos - p[1] * sin, p[0] * sin + p[1] * cos];
}

/** The point of segment `a`-`b` that is nearest to `p`. */
export function nearestOnSegment(p: Point, a: Point, b: Point): Point {
  const ab = subtract(b, a);
  const lengthSquared = ab[0] * ab[0] + ab[1] * ab[1];
  if (lengthSquared === 0) return a;
  const ap = subtract(p, a);
  const share = Math.min(1, Math.max(0, (ap[0] * ab[0] + ap[1] * ab[1]) / lengthSquared));
  return add(a, scale(ab, share));
}

/** The smallest box around `points`; null when there are none. */
export function boundsOf(points: Iterable<Point>): Box | null {
  let box: Box | null = null;
  for (const [x, y] of points) {
    box = box
      ? {
          left: Math.min(box.left, x),
          top: Math.min(box.top, y),
          right: Math.max(box.right, x),
          bottom: Math.max(box.bottom, y),
        }
      : { left: x, top: y, right: x, bottom: y };
  }
  return box;
}

/** The smallest box around `boxes`, of which there must be one at least. */
export function boxAround(boxes: Iterable<Box>): Box {
  let around = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const { left, top, right, bottom } of boxes) {
    around = {
      left: Math.min(around.left, left),
      top: Math.min(around.top, top),
      right: Math.max(around.right, right),
      bottom: Math.max(around.bottom, bottom),
    };
  }
  return around;
}

/** The box with `at` in its middle that reaches so far to each side, and so far up and down. */
export const boxAt = ([x, y]: Point, across: number, down: number = across): Box => ({
  left: x - across,
  top: y - down,
  right: x + across,
  bottom: y + down,
});

export function boxContains(box: Box, [x, y]: Point): boolean {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

export const growBox = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
});
