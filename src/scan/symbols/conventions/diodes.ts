import type { Point } from "../../../base/index.ts";
import { type DrawnSymbol, fill, line, none, twoEnded } from "../drawn-symbol.ts";

const CORNERS: readonly Point[] = [
  [-1, -1.1],
  [-1, 1.1],
  [1, 0],
];
const OUTLINE = [line([-1, -1.1], [-1, 1.1]), line([-1, 1.1], [1, 0]), line([1, 0], [-1, -1.1])];
const BAR = line([1, -1.1], [1, 1.1]);

/** Along the slanted sides and behind the base there is paper, or a larger one is filled. */
const OUTSIDE = [-1, 1].flatMap((side) => [
  none([-0.8, 1.6 * side], [0.5, 0.88 * side]),
  none([-1.55, 0.45 * side], [-1.55, 0.9 * side]),
  // A filled bar is as high there as elsewhere.
  none([0.45, 0.8 * side], [0.65, 0.8 * side]),
]);

const diode = (name: string, strokes: DrawnSymbol["strokes"]): DrawnSymbol =>
  twoEnded(
    {
      name,
      kind: "diode",
      half: [1, 1.1],
      anchors: [
        [
          [1, -1.1],
          [1, 1.1],
        ],
      ],
      heights: [0.75, 1, 1.3],
      turns: [0, 90, 180, 270],
      units: [2.5, 14],
    },
    strokes,
  );

/** IEC 60617: semiconductor diode S00641 (from memory), and filled as older sheets have it. */
export const DIODES: readonly DrawnSymbol[] = [
  diode("diode, an outline", [...OUTLINE, BAR, none([-0.6, 0], [0.3, 0])]),
  diode("diode, an outline with the line through it", [...OUTLINE, BAR, line([-1, 0], [1, 0])]),
  diode("diode, filled", [fill(...CORNERS), BAR, ...OUTSIDE]),
];
