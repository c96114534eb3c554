import type { Box, Point } from "../../base/index.ts";

/** Kinds of part that are looked for, by the names they have in a job. */
export type SymbolKind =
  | "battery"
  | "ground"
  | "fuse"
  | "switch"
  | "lamp"
  | "solenoid"
  | "motor"
  | "heater"
  | "resistor"
  | "diode"
  | "relay"
  | "module"
  | "inline"
  | "splice";

export type QuarterTurn = 0 | 90 | 180 | 270;

/** Where a line leaves a box, and by which of its sides. */
export interface EdgePin {
  readonly at: Point;
  readonly side: "left" | "right" | "top" | "bottom";
}

/** A place that looks like a symbol. All in pixels of the picture; nothing is placed by it. */
export interface SymbolProposal {
  readonly kind: SymbolKind;
  /** Around what is printed, without its leads. */
  readonly box: Box;
  /** The symbol's own point, as a part's `at`. */
  readonly at: Point;
  /** Clockwise, as a part's `turn`. */
  readonly turn: QuarterTurn;
  /** Its mirror image, across its own x axis: parts can't be drawn so. */
  readonly isMirrored?: true;
  /** Pixels per symbol unit with which the kind's own drawing covers the printed one. */
  readonly unit: number;
  /** 0 to 1: of what has 0.9, nine in ten are right on drawn test pages. */
  readonly confidence: number;
  /** Where lines leave it. */
  readonly ends: readonly Point[];
  /** A switch that is drawn with its contact closed. */
  readonly isClosed?: true;
  /** A module's, in reading order. */
  readonly pins?: readonly EdgePin[];
  /** Lines that pass an inline plug, one beside the other along its own y axis. */
  readonly ways?: number;
  /** What else it may be, likelier first. */
  readonly others: readonly { readonly kind: SymbolKind; readonly confidence: number }[];
  /** The placed part that it looks like; else it looks like a symbol of the trade. */
  readonly example?: string;
}

/** A part that the user has placed: what is printed in its box is an example of its kind. */
export interface PlacedExample {
  readonly id: string;
  readonly kind: string;
  readonly box: Box;
  readonly at: Point;
  /** Degrees clockwise. */
  readonly turn: number;
  readonly unit: number;
  readonly ends: readonly Point[];
}
