import { type Box, growBox, type Point } from "../../base/index.ts";
import type { QuarterTurn, SymbolKind } from "./symbol-proposal.ts";

/** One stroke of a symbol as the trade draws it. */
export interface DrawnStroke {
  readonly points: readonly Point[];
  /**
   * `lead`: the line that leaves it; `fill`: a closed outline full of ink; `dot`: places in ink;
   * `maybe`: drawn by some, and no sign against it; `none`: paper, or it is another symbol.
   */
  readonly is: "line" | "lead" | "fill" | "dot" | "maybe" | "none";
}

/** Where a line leaves the symbol's body, and which way. */
export interface DrawnEnd {
  readonly at: Point;
  readonly out: Point;
}

/**
 * A symbol drawn by one convention, in the units and about the point of its kind's own drawing, so
 * that where it fits the kind's drawing covers what is printed.
 */
export interface DrawnSymbol {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly strokes: readonly DrawnStroke[];
  /** In the order of the kind's pins. */
  readonly ends: readonly DrawnEnd[];
  /** Ink in here that is no stroke of it speaks against it. */
  readonly zone: Box;
  /** What is printed of it, without leads. */
  readonly body: Box;
  /** Strokes that are found as straight ones on a page: from each a place and a size follow. */
  readonly anchors: readonly (readonly [Point, Point])[];
  /** Turns that look different. */
  readonly turns: readonly QuarterTurn[];
  /** `other`: its mirror image is another thing; `same`: it stands for the same, and looks different. */
  readonly mirror: "none" | "same" | "other";
  /** Heights, as shares of the drawn one at the same length, at which it is tried. */
  readonly heights: readonly number[];
  /** What the kind's unit follows: the length along x, or across. */
  readonly unitBy: "x" | "y";
  /** Lengths of a unit, in line widths, between which it is printed. */
  readonly units: readonly [number, number];
  /** A contact that is drawn closed. */
  readonly isClosed?: true;
  /** Circles stay circles. */
  readonly isRound?: true;
  /** Its anchors may be no larger than letters, and hang on nothing. */
  readonly hasLooseAnchors?: true;
  /** A letter printed upright in its middle. */
  readonly letter?: "M";
  /** The most that its confidence can be: a shape that other things have too. */
  readonly most?: number;
}

export const line = (...points: readonly Point[]): DrawnStroke => ({ points, is: "line" });
export const lead = (...points: readonly Point[]): DrawnStroke => ({ points, is: "lead" });
export const maybe = (...points: readonly Point[]): DrawnStroke => ({ points, is: "maybe" });
export const none = (...points: readonly Point[]): DrawnStroke => ({ points, is: "none" });
export const fill = (...points: readonly Point[]): DrawnStroke => ({ points, is: "fill" });

/** A dot is wider than the line it lies on: ink so far to either side, units. */
export const dot = ([x, y]: Point, reach = 0.24): DrawnStroke => ({
  points: [
    [x, y - reach],
    [x, y + reach],
  ],
  is: "dot",
});

/** A box as four strokes: each must be there. */
export const box = ([left, top]: Point, [right, bottom]: Point): readonly DrawnStroke[] => [
  line([left, top], [right, top]),
  line([right, top], [right, bottom]),
  line([right, bottom], [left, bottom]),
  line([left, bottom], [left, top]),
];

/** A circle as four strokes. */
export const circle = ([x, y]: Point, radius: number): readonly DrawnStroke[] =>
  [0, 1, 2, 3].map((quarter) =>
    line(
      ...Array.from({ length: 7 }, (_, n): Point => {
        const angle = ((quarter + n / 6) * Math.PI) / 2;
        return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
      }),
    ),
  );

export const LEFT_END = (x: number): DrawnEnd => ({ at: [-x, 0], out: [-1, 0] });
export const RIGHT_END = (x: number): DrawnEnd => ({ at: [x, 0], out: [1, 0] });

/** The usual leads of a symbol with a line at either end. */
export const leadsFrom = (half: number, length = 1): readonly DrawnStroke[] => [
  lead([-half, 0], [-half - length, 0]),
  lead([half, 0], [half + length, 0]),
];

/** A symbol about its own middle with a line at either end. */
export function twoEnded(
  about: Pick<DrawnSymbol, "name" | "kind" | "anchors"> &
    Partial<DrawnSymbol> & {
      /** Half its length and half its height, units. */
      readonly half: Point;
      readonly body?: Box;
    },
  strokes: readonly DrawnStroke[],
): DrawnSymbol {
  const { half, ...rest } = about;
  const [x, y] = half;
  const body = { left: -x, top: -y, right: x, bottom: y };
  return {
    strokes: [...strokes, ...leadsFrom(x)],
    ends: [LEFT_END(x), RIGHT_END(x)],
    zone: growBox(body, 0.45),
    body,
    turns: [0, 90],
    mirror: "none",
    heights: [1],
    unitBy: "x",
    units: [2, 14],
    ...rest,
  };
}
