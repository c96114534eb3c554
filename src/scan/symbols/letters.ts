import { nearestOnSegment, type Point } from "../../base/index.ts";
import type { Pose } from "./pose.ts";
import { LETTER_ROOM } from "./stray-line.ts";
import type { SymbolPage } from "./symbol-page.ts";

/** Other letters, in a box of 1 by 1, y down: strokes of a plain face. */
const OTHERS: Readonly<Record<string, readonly (readonly Point[])[]>> = {
  G: [
    [
      [1, 0.2],
      [0.75, 0.02],
      [0.45, 0],
      [0.15, 0.15],
      [0, 0.5],
      [0.15, 0.85],
      [0.45, 1],
      [0.8, 0.97],
      [1, 0.85],
      [1, 0.55],
      [0.6, 0.55],
    ],
  ],
  V: [
    [
      [0, 0],
      [0.5, 1],
      [1, 0],
    ],
  ],
  A: [
    [
      [0, 1],
      [0.5, 0],
      [1, 1],
    ],
    [
      [0.2, 0.64],
      [0.8, 0.64],
    ],
  ],
  H: [
    [
      [0, 0],
      [0, 1],
    ],
    [
      [1, 0],
      [1, 1],
    ],
    [
      [0, 0.5],
      [1, 0.5],
    ],
  ],
  N: [
    [
      [0, 1],
      [0, 0],
      [1, 1],
      [1, 0],
    ],
  ],
  X: [
    [
      [0, 0],
      [1, 1],
    ],
    [
      [1, 0],
      [0, 1],
    ],
  ],
};

const RIVALS = Object.values(OTHERS);

/** An M's middle reaches down farther in some faces than in others. */
const MIDDLES = [0.55, 0.72, 0.95].map((depth): readonly (readonly Point[])[] => [
  [
    [0, 1],
    [0, 0],
    [0.5, depth],
    [1, 0],
    [1, 1],
  ],
]);

/** Share of ink and letter together that they have in common: surely it, surely not. */
const ITS_OWN = 0.62;
const NOT_ITS_OWN = 0.38;
/** How much less every other letter has where there is no doubt. */
const CLEARLY = 0.08;

/**
 * How surely an M stands in the middle of a round symbol, 0 to 1: by how well its strokes cover
 * the ink, against the letters that others have there. Read upright, or from either side.
 */
export function motorLetterIn(page: SymbolPage, pose: Pose): number {
  const ink = inkWithin(page, pose);
  let best = 0;
  for (const reading of READINGS) {
    const points = ink.map(reading);
    const frame = frameOf(points);
    const size = Math.max(frame.width, frame.height);
    // A letter is neither a bar nor a speck.
    if (frame.width < 0.4 * size || frame.height < 0.4 * size) continue;
    if (size < 0.5 * pose.along * page.fine.by) continue;
    const inCommon = (strokes: readonly (readonly Point[])[]) => common(points, frame, strokes);
    const own = Math.max(...MIDDLES.map(inCommon));
    const rival = Math.max(...RIVALS.map(inCommon));
    const like = Math.min(1, Math.max(0, (own - NOT_ITS_OWN) / (ITS_OWN - NOT_ITS_OWN)));
    const clear = Math.min(1, Math.max(0, 0.5 + (own - rival) / (2 * CLEARLY)));
    best = Math.max(best, like * clear);
  }
  return best;
}

const READINGS: readonly ((at: Point) => Point)[] = [
  (at) => at,
  ([x, y]) => [y, -x],
  ([x, y]) => [-y, x],
];

/** Ink about the middle of a pose, whole pixels of the page at its finest. */
function inkWithin({ fine: { ink, by } }: SymbolPage, { x, y, along }: Pose): Point[] {
  const [middleX, middleY] = [Math.round((x + 0.5) * by), Math.round((y + 0.5) * by)];
  const radius = LETTER_ROOM * along * by;
  const found: Point[] = [];
  const bottom = Math.min(ink.height - 1, middleY + radius);
  const right = Math.min(ink.width - 1, middleX + radius);
  for (let py = Math.max(0, Math.ceil(middleY - radius)); py <= bottom; py++) {
    for (let px = Math.max(0, Math.ceil(middleX - radius)); px <= right; px++) {
      if (!ink.data[py * ink.width + px]) continue;
      if (Math.hypot(px - middleX, py - middleY) < radius) found.push([px - middleX, py - middleY]);
    }
  }
  return found;
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

function frameOf(points: readonly Point[]): Frame {
  let [left, top, right, bottom] = [1e9, 1e9, -1e9, -1e9];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return { left, top, width: Math.max(1, right - left + 1), height: Math.max(1, bottom - top + 1) };
}

/**
 * Pixels that ink and a letter have in common, to all that either has. The letter fills the frame of
 * the ink, with a pen as wide as makes it as black as the ink.
 */
function common(
  points: readonly Point[],
  { left, top, width, height }: Frame,
  strokes: readonly (readonly Point[])[],
): number {
  const lengthIn = (w: number, h: number) =>
    strokes.reduce(
      (sum, stroke) =>
        sum +
        stroke
          .slice(1)
          .reduce(
            (all, [x, y], n) =>
              all + Math.hypot((x - (stroke[n]?.[0] ?? 0)) * w, (y - (stroke[n]?.[1] ?? 0)) * h),
            0,
          ),
      0,
    );
  const pen = Math.min(0.25 * width, Math.max(1, points.length / lengthIn(width, height)));
  const [w, h] = [width - pen, height - pen];
  const there = strokes.map((stroke) =>
    stroke.map(([x, y]): Point => [left + pen / 2 - 0.5 + x * w, top + pen / 2 - 0.5 + y * h]),
  );
  const isOn = (at: Point) =>
    there.some((stroke) =>
      stroke.slice(1).some((b, n) => {
        const [x, y] = nearestOnSegment(at, stroke[n] ?? b, b);
        return Math.hypot(x - at[0], y - at[1]) <= pen / 2;
      }),
    );
  let [both, either, bothWithin, eitherWithin] = [0, 0, 0, 0];
  const count = (x: number, isInk: boolean) => {
    const at = isInk ? 1 : 0;
    const isWithin = x > left + LEGS * width && x < left + (1 - LEGS) * width;
    either++;
    both += at;
    if (isWithin) eitherWithin++;
    if (isWithin) bothWithin += at;
  };
  const inked = new Set(points.map(([x, y]) => (y - top) * width + x - left));
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const isInk = inked.has(y * width + x);
      const isLetter = isOn([left + x, top + y]);
      if (isInk || isLetter) count(left + x, isInk && isLetter);
    }
  }
  // Most letters have two legs: what stands between them counts as much as all.
  return (both / either + bothWithin / Math.max(1, eitherWithin)) / 2;
}

/** Share of a letter's width that a leg takes. */
const LEGS = 0.22;
