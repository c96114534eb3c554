import type { Point, Random } from "../../../src/base/index.ts";

/** A stroke of a printed symbol, units; y down. */
export interface PrintedStroke {
  readonly points: readonly Point[];
  readonly isClosed?: true;
  readonly isFilled?: true;
}

/** A symbol as an office draws it, about its middle, its leads along x; units are some millimetres. */
export interface PrintedSymbol {
  readonly kind: string;
  readonly strokes: readonly PrintedStroke[];
  /** Where its leads end, units. */
  readonly ends: readonly Point[];
  /** Half its width and height without leads. */
  readonly half: Point;
  /** Upright in its middle, whatever the turn. */
  readonly letter?: string;
}

const line = (...points: Point[]): PrintedStroke => ({ points });
const ring = ([x, y]: Point, radius: number): PrintedStroke => ({
  points: Array.from({ length: 32 }, (_, n): Point => {
    const angle = (n / 32) * 2 * Math.PI;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }),
  isClosed: true,
});
const dot = (at: Point, radius: number): PrintedStroke => ({ ...ring(at, radius), isFilled: true });
const box = ([l, t]: Point, [r, b]: Point): PrintedStroke => ({
  points: [
    [l, t],
    [r, t],
    [r, b],
    [l, b],
  ],
  isClosed: true,
});

const between = (random: Random, least: number, most: number): number =>
  least + (most - least) * random.next();

const REACH = 3.2;
const leads = (half: number): PrintedStroke[] => [
  line([-REACH, 0], [-half, 0]),
  line([half, 0], [REACH, 0]),
];
const ENDS: readonly Point[] = [
  [-REACH, 0],
  [REACH, 0],
];

/**
 * Makers of symbols, each with measures that vary from office to office. Drawn by hand from what the
 * trade prints, not from the shapes that are searched for.
 */
export const SYMBOLS: readonly ((random: Random) => PrintedSymbol)[] = [
  (random) => {
    const [w, h] = [between(random, 1.5, 2.1), between(random, 0.55, 0.85)];
    return {
      kind: "fuse",
      strokes: [box([-w, -h], [w, h]), line([-REACH, 0], [REACH, 0])],
      ends: ENDS,
      half: [w, h],
    };
  },
  (random) => {
    const [w, h] = [between(random, 1.5, 2.1), between(random, 0.55, 0.85)];
    return {
      kind: "resistor",
      strokes: [box([-w, -h], [w, h]), ...leads(w)],
      ends: ENDS,
      half: [w, h],
    };
  },
  (random) => {
    const h = between(random, 0.6, 1);
    const w = between(random, 1.7, 2.3);
    const step = w / 6;
    const tips = [1, -1, 1, -1, 1, -1].map(
      (side, n): Point => [-w + step * (2 * n + 1), -side * h],
    );
    return {
      kind: "resistor",
      strokes: [line([-w, 0], ...tips, [w, 0]), ...leads(w)],
      ends: ENDS,
      half: [w, h],
    };
  },
  (random) => {
    const r = between(random, 1.2, 1.8);
    const d = r * Math.SQRT1_2;
    return {
      kind: "lamp",
      strokes: [ring([0, 0], r), line([-d, -d], [d, d]), line([-d, d], [d, -d]), ...leads(r)],
      ends: ENDS,
      half: [r, r],
    };
  },
  (random) => {
    const r = between(random, 1.4, 2);
    return {
      kind: "motor",
      strokes: [ring([0, 0], r), ...leads(r)],
      ends: ENDS,
      half: [r, r],
      letter: "M",
    };
  },
  (random) => {
    const [w, h] = [between(random, 1, 1.5), between(random, 0.9, 1.4)];
    const up = random.chance(0.5) ? 1 : -1;
    return {
      kind: "solenoid",
      strokes: [box([-w, -h], [w, h]), line([-w, h * up], [w, -h * up]), ...leads(w)],
      ends: ENDS,
      half: [w, h],
    };
  },
  (random) => {
    const [gap, wide] = [between(random, 0.5, 0.75), between(random, 1.2, 1.7)];
    const bars = [0, 1, 2].map((n) =>
      line([n * gap, -wide * (1 - n / 3)], [n * gap, wide * (1 - n / 3)]),
    );
    return {
      kind: "ground",
      strokes: [line([-2, 0], [0, 0]), ...bars],
      ends: [[-2, 0]],
      half: [gap, wide],
    };
  },
  (random) => {
    const cells = 1 + random.below(2);
    const [gap, wide] = [between(random, 0.55, 0.75), between(random, 1.3, 1.8)];
    const plates = 2 * cells;
    const half = ((plates - 1) * gap) / 2;
    const bars = Array.from({ length: plates }, (_, n) => {
      const reach = n % 2 === 0 ? wide : wide * 0.5;
      return line([-half + n * gap, -reach], [-half + n * gap, reach]);
    });
    return { kind: "battery", strokes: [...bars, ...leads(half)], ends: ENDS, half: [half, wide] };
  },
  (random) => {
    const [w, h] = [between(random, 0.8, 1.1), between(random, 0.9, 1.2)];
    const triangle: PrintedStroke = {
      points: [
        [-w, -h],
        [-w, h],
        [w, 0],
      ],
      isClosed: true,
      ...(random.chance(0.5) ? { isFilled: true as const } : {}),
    };
    return {
      kind: "diode",
      strokes: [triangle, line([w, -h], [w, h]), ...leads(w)],
      ends: ENDS,
      half: [w, h],
    };
  },
  (random) => {
    const [x, lift] = [between(random, 1.3, 1.7), between(random, 0.8, 1.3)];
    const isDotted = random.chance(0.5);
    return {
      kind: "switch",
      strokes: [
        line([-x, 0], [x - 0.1, -lift]),
        ...leads(x),
        ...(isDotted ? [dot([-x, 0], 0.2), dot([x, 0], 0.2)] : []),
      ],
      ends: ENDS,
      half: [x, lift],
    };
  },
  (random) => {
    const [reach, gap] = [between(random, 1, 1.4), between(random, 0.9, 1.3)];
    const steep = reach * between(random, 0.85, 1.2);
    const [first, second] = [(reach - gap) / 2, (reach + gap) / 2];
    const chevron = (tip: number) => line([tip - reach, -steep], [tip, 0], [tip - reach, steep]);
    return {
      kind: "inline",
      strokes: [
        chevron(first),
        chevron(second),
        line([-REACH, 0], [first, 0]),
        line([second, 0], [REACH, 0]),
      ],
      ends: ENDS,
      half: [second, steep],
    };
  },
  (random) => {
    const [r, thick] = [between(random, 1, 1.4), between(random, 0.3, 0.42)];
    const [from, to] = [-r * between(random, 0.35, 0.55), r * between(random, 1.1, 1.4)];
    const bar = box([from, -thick], [to, thick]);
    const cup = Array.from({ length: 13 }, (_, n): Point => {
      const angle = ((90 + 15 * n) * Math.PI) / 180;
      return [r * Math.cos(angle), r * Math.sin(angle)];
    });
    return {
      kind: "inline",
      strokes: [
        line(...cup),
        { ...bar, isFilled: true },
        line([-REACH, 0], [-r, 0]),
        line([to, 0], [REACH, 0]),
      ],
      ends: ENDS,
      half: [r, r],
    };
  },
];

/** What a finder must leave alone: printed beside lines, or between them, and no part. */
export const WORDS = [
  "O",
  "0",
  "H",
  "8",
  "M1",
  "F3 10A",
  "X",
  "15-4 RD/WH",
  "E",
  "IGN",
  "87a",
  "B2",
];

export { between };
