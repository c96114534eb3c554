import type { Point } from "../../../base/index.ts";
import { type DrawnSymbol, line, maybe, none, twoEnded } from "../drawn-symbol.ts";

const FOUR = [0, 90, 180, 270] as const;
/** Half the length of the whole, units. */
const HALF = 2;

/** A place on a half round about a middle on the line, `angle` from its left foot over its top, degrees. */
const onRound = (middle: number, radius: number, angle: number): Point => {
  const radians = (angle * Math.PI) / 180;
  return [middle - radius * Math.cos(radians), -radius * Math.sin(radians)];
};

const CHORDS = [
  [55, 125],
  [66, 114],
  [45, 90],
  [90, 135],
  [22, 77],
  [103, 158],
] as const;
/** Where two rounds meet, ink fills the corner between them, degrees from their feet. */
const FOOT = 28;

/** IEC 60617: coil S00583 (from memory): half rounds in a row, on one side of the line. */
function winding(rounds: number): DrawnSymbol {
  const radius = HALF / rounds;
  const middles = Array.from({ length: rounds }, (_, n) => -HALF + (2 * n + 1) * radius);
  const arc = (middle: number, from: number, to: number) =>
    Array.from({ length: 8 }, (_, n) => onRound(middle, radius, from + ((to - from) * n) / 7));
  return twoEnded(
    {
      name: `coil, ${rounds} half rounds`,
      kind: "solenoid",
      half: [HALF, radius],
      body: { left: -HALF, top: -radius, right: HALF, bottom: 0 },
      zone: { left: -HALF - 0.45, top: -radius - 0.45, right: HALF + 0.45, bottom: 0.6 },
      // A round is found as straight strokes: the larger it is printed the more.
      anchors: middles.flatMap((middle) =>
        CHORDS.map(
          ([from, to]) => [onRound(middle, radius, from), onRound(middle, radius, to)] as const,
        ),
      ),
      turns: FOUR,
      mirror: "none",
      heights: [1],
      isRound: true,
      units: [3, 20],
    },
    [
      ...middles.map((middle) => line(...arc(middle, FOOT, 180 - FOOT))),
      ...middles.flatMap((middle) => [
        maybe(...arc(middle, 0, FOOT)),
        maybe(...arc(middle, 180 - FOOT, 180)),
      ]),
      // Paper below each round, and no line along their feet.
      ...middles.map((middle) => none([middle, -0.45 * radius], [middle, 0.3])),
    ],
  );
}

export const WINDINGS: readonly DrawnSymbol[] = [3, 4, 5].map(winding);
