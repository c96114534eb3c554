import type { Point } from "../../../base/index.ts";
import {
  type DrawnStroke,
  type DrawnSymbol,
  dot,
  line,
  maybe,
  none,
  twoEnded,
} from "../drawn-symbol.ts";

const ALL_TURNS = [0, 90, 180, 270] as const;

/** Two arms that meet in a tip to the right. */
const chevron = (tip: number): readonly DrawnStroke[] => [
  line([tip - 0.8, -0.8], [tip, 0]),
  line([tip, 0], [tip - 0.8, 0.8]),
];

/** IEEE 315 5.3 (from memory): a pin's arrow in the like-shaped mouth of its socket. */
const CHEVRONS = [0.5, 0.65, 0.8, 1].map((gap): DrawnSymbol => {
  const [first, second] = [-gap / 2 + 0.4, gap / 2 + 0.4];
  const arms = [first, second].map((tip): readonly [Point, Point] => [
    [tip - 0.8, -0.8],
    [tip, 0],
  ]);
  return twoEnded(
    {
      name: `inline plug, two chevrons ${gap} apart`,
      kind: "inline",
      half: [second, 0.8],
      body: { left: first - 0.8, top: -0.8, right: second, bottom: 0.8 },
      anchors: arms,
      heights: [0.75, 1, 1.35],
      turns: ALL_TURNS,
      zone: { left: first - 1.1, top: -1.2, right: second + 0.45, bottom: 1.2 },
      units: [3, 14],
    },
    [
      ...chevron(first),
      ...chevron(second),
      line([first - 0.8, 0], [first, 0]),
      maybe([first, 0], [second, 0]),
    ],
  );
});

const arc = (at: Point, radius: number, from: number, to: number): readonly Point[] =>
  Array.from({ length: 7 }, (_, n): Point => {
    const angle = ((from + ((to - from) * n) / 6) * Math.PI) / 180;
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
  });

const onArc = (angle: number): Point => arc([0, 0], 0.8, angle, angle)[0] as Point;

/** IEC 60617: plug and socket S00033 (from memory): a filled bar before a half round. */
const HALF_ROUND: DrawnSymbol = twoEnded(
  {
    name: "inline plug, a half round and a bar",
    kind: "inline",
    half: [1, 0.8],
    body: { left: -0.8, top: -0.8, right: 1, bottom: 0.8 },
    anchors: [
      [onArc(180), onArc(225)],
      [onArc(180), onArc(135)],
      [onArc(225), onArc(270)],
      [onArc(135), onArc(90)],
    ],
    turns: ALL_TURNS,
    units: [4.5, 14],
  },
  [
    line(...arc([0, 0], 0.8, 90, 180)),
    line(...arc([0, 0], 0.8, 180, 270)),
    // The bar is wider than a line that runs through.
    ...[-0.2, 0.1, 0.4, 0.7].map((x) => dot([x, 0], 0.17)),
    line([-0.4, 0], [1, 0]),
    // No line goes on from the half round's ends: that would be one that jumps another.
    ...[-1, 1].map((side) => none([0, 1.1 * side], [0, 1.7 * side])),
    ...[-1, 1].map((side) => none([0.55, 0.75 * side], [0.8, 0.75 * side])),
  ],
);

/** Plugs and sockets in the run of a line. */
export const CONNECTORS: readonly DrawnSymbol[] = [...CHEVRONS, HALF_ROUND];
