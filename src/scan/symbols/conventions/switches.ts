import type { Point } from "../../../base/index.ts";
import {
  circle,
  type DrawnEnd,
  type DrawnStroke,
  type DrawnSymbol,
  dot,
  lead,
  line,
  maybe,
  none,
} from "../drawn-symbol.ts";

const FOUR = [0, 90, 180, 270] as const;
const HINGE = -1.5;
const THROW = 1.6;

/** What moves the blade, where it is drawn. */
const LINK = maybe([0, -3], [0, 0.5]);

/** In smaller symbols, line widths to a unit, a dot is no wider than the line. */
const DOTTED = 3;

function contact(
  name: string,
  strokes: readonly DrawnStroke[],
  anchors: DrawnSymbol["anchors"],
  more: Partial<DrawnSymbol> = {},
): DrawnSymbol {
  return {
    name,
    kind: "switch",
    strokes: [lead([-3, 0], [HINGE, 0]), lead([THROW, 0], [3, 0]), ...strokes, LINK],
    ends: [
      { at: [HINGE, 0], out: [-1, 0] },
      { at: [THROW, 0], out: [1, 0] },
    ],
    zone: { left: -1.9, top: -1.5, right: 2, bottom: 0.7 },
    body: { left: HINGE - 0.2, top: -1.4, right: THROW + 0.2, bottom: 0.2 },
    anchors,
    turns: FOUR,
    mirror: "same",
    heights: [0.8, 1.15, 1.6],
    unitBy: "x",
    units: [2, 14],
    ...more,
  };
}

const BLADE: readonly [Point, Point] = [
  [HINGE, 0],
  [1.4, -1.1],
];

/** Where the line would go on, and the side to which the blade does not open. */
const GAP = [
  none([-0.5, 0], [1.1, 0]),
  none([-0.9, 0.5], [1.4, 0.5]),
  none([1, -0.5], [1.5, -0.4]),
];

/** IEC 60617: make contact S00227 (from memory); small circles at its ends are IEEE 315. */
const OPEN: readonly DrawnSymbol[] = [
  contact("switch, an open blade", [line(...BLADE), ...GAP], [BLADE], { most: 0.85 }),
  contact(
    "switch, an open blade between two dots",
    [line(...BLADE), ...GAP, dot([HINGE, 0]), dot([THROW, 0])],
    [BLADE],
    { units: [DOTTED, 14] },
  ),
  contact(
    "switch, an open blade between two circles",
    [
      line([HINGE + 0.3, -0.1], [1.4, -1.1]),
      ...circle([HINGE, 0], 0.35),
      ...circle([THROW, 0], 0.35),
      ...GAP,
    ],
    [
      [
        [HINGE + 0.3, -0.1],
        [1.4, -1.1],
      ],
    ],
  ),
];

/** A closed blade is a line with a dot at either end: what moves it, across its middle, tells it apart. */
const closed = (name: string, actuator: readonly DrawnStroke[], bar: readonly [Point, Point]) =>
  contact(
    name,
    [
      line([HINGE, 0], [THROW, 0]),
      line([0, -1.6], [0, 0]),
      dot([HINGE, 0]),
      dot([THROW, 0]),
      ...actuator,
    ],
    [bar],
    {
      zone: { left: -1.9, top: -2.9, right: 2, bottom: 0.7 },
      body: { left: HINGE - 0.2, top: -2.5, right: THROW + 0.2, bottom: 0.2 },
      heights: [1],
      hasLooseAnchors: true,
      isClosed: true,
      most: 0.85,
    },
  );

const CLOSED: readonly DrawnSymbol[] = [
  closed(
    "switch, closed, with a turning handle",
    [line([-1, -1.6], [1, -1.6]), line([1, -1.6], [1, -2.5])],
    [
      [-1, -1.6],
      [1, -1.6],
    ],
  ),
  closed(
    "switch, closed, with a push",
    [line([-0.8, -1.6], [0.8, -1.6])],
    [
      [-0.8, -1.6],
      [0.8, -1.6],
    ],
  ),
];

const OVER_ENDS: readonly DrawnEnd[] = [
  { at: [HINGE, 0], out: [-1, 0] },
  { at: [THROW, -1], out: [1, 0] },
  { at: [THROW, 1], out: [1, 0] },
];

/** One common line and two to choose from; `tip`: where the blade ends. */
function changeover(name: string, tip: Point, hasDots: boolean): DrawnSymbol {
  return {
    name,
    kind: "switch",
    strokes: [
      lead([-3, 0], [HINGE, 0]),
      lead([THROW, -1], [2.6, -1]),
      lead([THROW, 1], [2.6, 1]),
      line([HINGE, 0], tip),
      ...(hasDots ? [dot([HINGE, 0])] : []),
      LINK,
    ],
    ends: OVER_ENDS,
    zone: { left: -1.9, top: Math.min(-1.4, tip[1] - 0.4), right: 2, bottom: 1.5 },
    body: { left: HINGE - 0.2, top: Math.min(-1.2, tip[1]), right: THROW + 0.2, bottom: 1.2 },
    anchors: [[[HINGE, 0], tip]],
    turns: FOUR,
    mirror: "same",
    heights: [0.75, 1, 1.35],
    unitBy: "x",
    units: [hasDots ? DOTTED : 2, 14],
    most: hasDots ? 0.97 : 0.7,
  };
}

// Without dots, a blade in the middle is any line that ends between two others.
const CHANGEOVERS: readonly DrawnSymbol[] = [
  changeover("switch between two, in its middle", [1.5, 0], true),
  ...[true, false].flatMap((hasDots) => [
    changeover("switch between two, open", [1.4, -2.1], hasDots),
    changeover("switch between two, at one of them", [THROW, -1], hasDots),
  ]),
];

export const SWITCHES: readonly DrawnSymbol[] = [...OPEN, ...CLOSED, ...CHANGEOVERS];
