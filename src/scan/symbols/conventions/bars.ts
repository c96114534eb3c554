import type { Point } from "../../../base/index.ts";
import { type DrawnStroke, type DrawnSymbol, lead, line, none, twoEnded } from "../drawn-symbol.ts";

const FOUR = [0, 90, 180, 270] as const;

/** IEC 60617: earth S00200, frame S00204 (from memory). */
/** Half the bars, units; the last is a mere dash with some. */
const THREE_BARS = [
  [1.5, 1, 0.5],
  [1.5, 0.9, 0.25],
] as const;

/** Bars end free: what goes on is another line. */
const beyond = (x: number, y: number): readonly DrawnStroke[] =>
  [-1, 1].map((side) => none([side * (x + 0.35), y], [side * (x + 0.8), y]));

const GROUNDS: readonly DrawnSymbol[] = [
  ...THREE_BARS.map(
    ([first, second, third], n): DrawnSymbol => ({
      name: n === 0 ? "ground, three bars" : "ground, two bars and a dash",
      kind: "ground",
      strokes: [
        lead([0, -0.6], [0, 1.2]),
        line([-first, 1.2], [first, 1.2]),
        line([-second, 1.8], [second, 1.8]),
        line([-third, 2.4], [third, 2.4]),
        none([-0.8, 1.5], [0.8, 1.5]),
        none([-0.4, 2.1], [0.4, 2.1]),
        none([0, 2.7], [0, 3.2]),
        ...beyond(first, 1.2),
        ...beyond(second, 1.8),
      ],
      ends: [{ at: [0, 0], out: [0, -1] }],
      zone: { left: -2, top: 0.5, right: 2, bottom: 3 },
      body: { left: -1.5, top: 1.2, right: 1.5, bottom: 2.4 },
      anchors: [
        [
          [-second, 1.8],
          [second, 1.8],
        ],
        [
          [-first, 1.2],
          [first, 1.2],
        ],
      ],
      turns: FOUR,
      mirror: "none",
      heights: [0.75, 1, 1.4, 1.9],
      unitBy: "x",
      units: [2, 14],
    }),
  ),
  {
    name: "frame, a bar with three strokes",
    kind: "ground",
    strokes: [
      lead([0, -0.6], [0, 1.2]),
      line([-1.5, 1.2], [1.5, 1.2]),
      ...[-1.5, 0, 1.5].map((x) => line([x, 1.2], [x - 0.7, 2.4])),
      // Between the strokes, and below them, there is paper: a coil beside its core has loops there.
      ...[-0.95, 0.55].map((x) => none([x, 1.75], [x - 0.35, 2.35])),
      none([-2, 2.85], [0.6, 2.85]),
      ...beyond(1.5, 1.2),
    ],
    ends: [{ at: [0, 0], out: [0, -1] }],
    zone: { left: -2.6, top: 0.5, right: 2, bottom: 3 },
    body: { left: -2.2, top: 1.2, right: 1.5, bottom: 2.4 },
    anchors: [
      [
        [-1.5, 1.2],
        [1.5, 1.2],
      ],
    ],
    turns: FOUR,
    mirror: "same",
    heights: [0.7, 1, 1.4],
    unitBy: "x",
    units: [3, 14],
  },
];

/** IEC 60617: battery of cells S01341 (from memory); the long plate is the positive one. */
function battery(cells: number): DrawnSymbol {
  const plates = 2 * cells;
  const gap = cells === 1 ? 0.7 : 2 / (plates - 1);
  const half = (gap * (plates - 1)) / 2;
  const reach = (n: number) => (n % 2 === 0 ? 1.6 : 0.8);
  const at = (n: number): readonly [Point, Point] => [
    [-half + n * gap, -reach(n)],
    [-half + n * gap, reach(n)],
  ];
  const inner = cells === 1 ? [0, 1] : [1, 2];
  return twoEnded(
    {
      name: cells === 1 ? "battery, one cell" : `battery, ${cells} cells`,
      kind: "battery",
      half: [half, 1.6],
      anchors: inner.map(at),
      heights: [0.55, 0.8, 1.15, 1.7],
      turns: FOUR,
      unitBy: "y",
      units: [2, 14],
    },
    [
      ...Array.from({ length: plates }, (_, n) => line(...at(n))),
      ...Array.from({ length: plates - 1 }, (_, n) => {
        const x = -half + (n + 0.5) * gap;
        return none([x, -0.6], [x, 0.6]);
      }),
    ],
  );
}

export const BARS: readonly DrawnSymbol[] = [...GROUNDS, ...[1, 2, 3].map(battery)];
