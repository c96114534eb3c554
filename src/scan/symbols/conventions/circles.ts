import { circle, type DrawnSymbol, line, twoEnded } from "../drawn-symbol.ts";

const REACH = 1.6 * Math.SQRT1_2;

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
      line([-REACH, -REACH], [REACH, REACH]),
      line([-REACH, REACH], [REACH, -REACH]),
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
