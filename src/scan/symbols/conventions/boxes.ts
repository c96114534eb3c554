import { box, type DrawnSymbol, line, none, twoEnded } from "../drawn-symbol.ts";

const LONG_BOX = box([-2, -0.8], [2, 0.8]);
const LONG_SIDE = [
  [
    [-2, -0.8],
    [2, -0.8],
  ],
  [
    [-2, 0.8],
    [2, 0.8],
  ],
] as const;
const SHORT_SIDE = [
  [
    [-2, -0.8],
    [-2, 0.8],
  ],
  [
    [2, -0.8],
    [2, 0.8],
  ],
] as const;

/** The long sides end at the corners: those that run on are other lines, a frame's or a fold's. */
const CORNERS_FREE = [-1, 1].flatMap((end) =>
  [-0.8, 0.8].map((side) => none([2.4 * end, side], [2.95 * end, side])),
);

/** Between the bars of a heating element no line runs on. */
const BETWEEN = [-1.5, -0.5, 0.5, 1.5].map((x) => none([x, -0.45], [x, 0.45]));

/** IEC 60617: fuse S00362, resistor S00555, heating element S00567, operating device S00305 (from memory). */
export const BOXES: readonly DrawnSymbol[] = [
  twoEnded(
    {
      name: "fuse, a box with the line through it",
      kind: "fuse",
      half: [2, 0.8],
      // A side may be broken where the line between its ends is not.
      anchors: [
        ...LONG_SIDE,
        [
          [-2, 0],
          [2, 0],
        ],
      ],
      heights: [0.65, 0.85, 1.1, 1.4],
    },
    [...LONG_BOX, line([-2, 0], [2, 0]), ...CORNERS_FREE],
  ),
  twoEnded(
    {
      name: "resistor, an empty box",
      kind: "resistor",
      half: [2, 0.8],
      anchors: [...LONG_SIDE, ...SHORT_SIDE],
      heights: [0.65, 0.85, 1.1, 1.4],
    },
    [...LONG_BOX, none([-1.7, 0], [1.7, 0]), ...CORNERS_FREE],
  ),
  twoEnded(
    {
      name: "heating element, a box in four",
      kind: "heater",
      half: [2, 0.8],
      anchors: LONG_SIDE,
      heights: [0.65, 0.85, 1.1, 1.4],
    },
    [...LONG_BOX, ...[-1, 0, 1].map((x) => line([x, -0.8], [x, 0.8])), ...BETWEEN, ...CORNERS_FREE],
  ),
  twoEnded(
    {
      name: "coil, a box with a diagonal",
      kind: "solenoid",
      half: [1.4, 1.2],
      anchors: [
        [
          [-1.4, 1.2],
          [1.4, -1.2],
        ],
        [
          [-1.4, -1.2],
          [1.4, -1.2],
        ],
        [
          [1.4, -1.2],
          [1.4, 1.2],
        ],
      ],
      heights: [0.75, 1, 1.3, 1.7],
      mirror: "same",
    },
    [...box([-1.4, -1.2], [1.4, 1.2]), line([-1.4, 1.2], [1.4, -1.2])],
  ),
  twoEnded(
    {
      name: "coil, a box across the line",
      kind: "solenoid",
      half: [1, 2],
      anchors: [
        [
          [-1, -2],
          [-1, 2],
        ],
        [
          [1, -2],
          [1, 2],
        ],
      ],
      heights: [0.7, 1, 1.4],
      unitBy: "y",
    },
    [...box([-1, -2], [1, 2]), none([-0.7, 0], [0.7, 0])],
  ),
];

const TEETH = 3;

/** IEEE 315 2.1.1 (from memory): three teeth up, three down. */
function zigzag(): DrawnSymbol {
  const pitch = 4 / (2 * TEETH);
  const tips = Array.from(
    { length: 2 * TEETH },
    (_, n) => [-2 + pitch * (n + 0.5), n % 2 === 0 ? -0.8 : 0.8] as const,
  );
  const points = [[-2, 0] as const, ...tips, [2, 0] as const];
  const strokes = points.slice(1).map((to, n) => line(points[n] ?? to, to));
  return twoEnded(
    {
      name: "resistor, a zigzag",
      kind: "resistor",
      half: [2, 0.8],
      anchors: [2, 3].map((n) => [points[n] ?? [0, 0], points[n + 1] ?? [0, 0]] as const),
      heights: [0.7, 1, 1.4],
      mirror: "same",
      units: [2, 14],
    },
    strokes,
  );
}

export const ZIGZAGS: readonly DrawnSymbol[] = [zigzag()];
