import { turn } from "../../../base/index.ts";
import { circle, type DrawnSymbol, line, none, twoEnded } from "../drawn-symbol.ts";

const REACH = 1.6 * Math.SQRT1_2;

/** From the middle to the rim, each by itself: a letter's strokes do not come so far. */
const ARMS = [45, 135, 225, 315].map((way) => line(turn([0.2, 0], way), turn([1.6, 0], way)));

/** IEC 60617: lamp S00965, machine S00819 with its letter (from memory). */
export const CIRCLES: readonly DrawnSymbol[] = [
  twoEnded(
    {
      name: "lamp, a circle with a cross",
      kind: "lamp",
      half: [1.6, 1.6],
      isRound: true,
      anchors: [
        [
          [-REACH, -REACH],
          [REACH, REACH],
        ],
        [
          [0, 0],
          [REACH, REACH],
        ],
        [
          [0, 0],
          [-REACH, -REACH],
        ],
      ],
    },
    [
      ...circle([0, 0], 1.6),
      ...ARMS,
      ...[0, 90, 180, 270].map((way) => none(turn([0.6, 0], way), turn([1.25, 0], way))),
    ],
  ),
  twoEnded(
    {
      name: "motor, a circle with M",
      kind: "motor",
      half: [1.8, 1.8],
      isRound: true,
      anchors: [],
      letter: "M",
    },
    circle([0, 0], 1.8),
  ),
];
