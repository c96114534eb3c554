import { distance, type Point } from "../base/index.ts";

export type FillShape = "row" | "grid" | "ring";

/** In which order a grid's cavities are marked, beginning where the drag began. */
export type FillRun = "across" | "down" | "serpentine";

/** Many cavities put on a photo by one drag. Points are pixels of the photo. */
export type Fill =
  /** Evenly spaced from the first cavity to the last. */
  | { readonly shape: "row"; readonly from: Point; readonly to: Point; readonly count: number }
  /** From one corner cavity to the one across from it. */
  | {
      readonly shape: "grid";
      readonly from: Point;
      readonly to: Point;
      readonly rows: number;
      readonly columns: number;
      /** How far the rows are turned against the edge of the photo, radians. */
      readonly tilt: number;
      readonly run: FillRun;
    }
  /** Round a middle, beginning at a cavity on the rim. */
  | {
      readonly shape: "ring";
      readonly middle: Point;
      readonly rim: Point;
      readonly count: number;
      readonly turn: "clockwise" | "anticlockwise";
    };

/** More in one line than any plug has. */
export const MOST_IN_FILL = 60;

/** What was filled before tells the pitch (pixels) and how the plug lies in the photo (radians). */
export interface FillHint {
  readonly pitch: number | null;
  readonly tilt: number;
}

export const NO_HINT: FillHint = { pitch: null, tilt: 0 };

/** Cavities that a first row or ring is taken to have; the user says how many. */
const FIRST_COUNT = { row: 5, ring: 8 } as const;
const FIRST_GRID = { rows: 2, columns: 5 } as const;

/**
 * How far, in pitches, the end of a row may lie off the pitch of the row before and still be pulled
 * to it. What is further off is meant.
 */
const PITCH_REACH = 0.1;
/** Rows up to this far from level or upright, radians (about 20°), are those of a photo held askew. */
const MOST_TILT = 0.35;

/** The cavities of a fill, pixels, in the order of their marks. */
export function pointsOfFill(fill: Fill): readonly Point[] {
  switch (fill.shape) {
    case "row":
      return Array.from({ length: fill.count }, (_, index) =>
        between(fill.from, fill.to, fill.count > 1 ? index / (fill.count - 1) : 0),
      );
    case "grid":
      return gridPoints(fill);
    case "ring":
      return ringPoints(fill);
  }
}

const between = ([ax, ay]: Point, [bx, by]: Point, share: number): Point => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

function gridPoints(fill: Extract<Fill, { shape: "grid" }>): Point[] {
  const { from, rows, columns, tilt, run } = fill;
  const [alongX, alongY] = [Math.cos(tilt), Math.sin(tilt)];
  const [dx, dy] = [fill.to[0] - from[0], fill.to[1] - from[1]];
  const length = dx * alongX + dy * alongY;
  const depth = -dx * alongY + dy * alongX;
  const at = (row: number, column: number): Point => {
    const u = columns > 1 ? (length * column) / (columns - 1) : 0;
    const v = rows > 1 ? (depth * row) / (rows - 1) : 0;
    return [from[0] + u * alongX - v * alongY, from[1] + u * alongY + v * alongX];
  };
  return Array.from({ length: rows * columns }, (_, index) => {
    if (run === "down") return at(index % rows, Math.floor(index / rows));
    const row = Math.floor(index / columns);
    const step = index % columns;
    return at(row, run === "serpentine" && row % 2 === 1 ? columns - 1 - step : step);
  });
}

function ringPoints({ middle, rim, count, turn }: Extract<Fill, { shape: "ring" }>): Point[] {
  const [dx, dy] = [rim[0] - middle[0], rim[1] - middle[1]];
  // Downwards is positive in a photo, so a growing angle runs clockwise.
  const step = ((turn === "clockwise" ? 1 : -1) * 2 * Math.PI) / count;
  return Array.from({ length: count }, (_, index) => {
    const [cos, sin] = [Math.cos(index * step), Math.sin(index * step)];
    return [middle[0] + dx * cos - dy * sin, middle[1] + dx * sin + dy * cos];
  });
}

/** What a drag from `from` to `to` fills, with counts guessed from what was filled before. */
export function fillOfDrag(
  shape: FillShape,
  from: Point,
  to: Point,
  before: Fill | null,
  hint: FillHint,
): Fill {
  const last = before?.shape === shape ? before : null;
  switch (shape) {
    case "row": {
      const known = last?.shape === "row" ? last.count : FIRST_COUNT.row;
      const count = hint.pitch === null ? known : countAlong(distance(from, to), hint.pitch);
      return { shape, from, to: onPitch(from, to, count, hint.pitch), count };
    }
    case "grid": {
      const run = last?.shape === "grid" ? last.run : "across";
      const { rows, columns } = last?.shape === "grid" ? last : FIRST_GRID;
      return { shape, from, to, rows, columns, tilt: hint.tilt, run };
    }
    case "ring": {
      const { count, turn } =
        last?.shape === "ring" ? last : ({ count: FIRST_COUNT.ring, turn: "clockwise" } as const);
      return { shape, middle: from, rim: to, count, turn };
    }
  }
}

/** The other end of the same drag: counts that the user chose stay as they are. */
export function draggedOn(fill: Fill, to: Point, chosen: boolean, hint: FillHint): Fill {
  switch (fill.shape) {
    case "row": {
      const guess = hint.pitch !== null && !chosen;
      const count = guess ? countAlong(distance(fill.from, to), hint.pitch ?? 0) : fill.count;
      return { ...fill, to: onPitch(fill.from, to, count, hint.pitch), count };
    }
    case "grid":
      return { ...fill, to };
    case "ring":
      return { ...fill, rim: to };
  }
}

const countAlong = (length: number, pitch: number) => inRange(Math.round(length / pitch) + 1);

const inRange = (count: number) => Math.min(MOST_IN_FILL, Math.max(1, count));

/** The end of a row, pulled to where the pitch of the row before puts it when it is nearly there. */
function onPitch(from: Point, to: Point, count: number, pitch: number | null): Point {
  const length = distance(from, to);
  if (pitch === null || count < 2 || length === 0) return to;
  const due = pitch * (count - 1);
  return Math.abs(length - due) <= PITCH_REACH * pitch ? between(from, to, due / length) : to;
}

/** The same fill with one cavity more or fewer: of its row or ring, or columns of its grid. */
export function withCount(fill: Fill, count: number): Fill {
  const fits = inRange(Math.round(count));
  return fill.shape === "grid" ? { ...fill, columns: fits } : { ...fill, count: fits };
}

/** Where the drag of a fill ended: the last cavity of a row, the far corner of a grid, a ring's rim. */
export const endOfFill = (fill: Fill): Point => (fill.shape === "ring" ? fill.rim : fill.to);

export const countOfFill = (fill: Fill) => (fill.shape === "grid" ? fill.columns : fill.count);

/** The pitch and tilt that a finished fill hands on to the next. */
export function hintOf(fill: Fill, before: FillHint): FillHint {
  if (fill.shape === "ring") return before;
  if (fill.shape === "grid") {
    const [first, second] = pointsOfFill({ ...fill, run: "across" });
    const pitch = first && second && fill.columns > 1 ? distance(first, second) : 0;
    return { pitch: pitch > 0 ? pitch : before.pitch, tilt: fill.tilt };
  }
  const length = distance(fill.from, fill.to);
  if (fill.count < 2 || length === 0) return before;
  return {
    pitch: length / (fill.count - 1),
    tilt: tiltOf(fill.to[0] - fill.from[0], fill.to[1] - fill.from[1]) ?? before.tilt,
  };
}

/** The lesser turn that makes a level or an upright row lie along (dx, dy); null when it is neither. */
function tiltOf(dx: number, dy: number): number | null {
  const quarter = Math.PI / 2;
  const angle = Math.atan2(dy, dx);
  const tilt = angle - Math.round(angle / quarter) * quarter;
  return Math.abs(tilt) <= MOST_TILT ? tilt : null;
}
