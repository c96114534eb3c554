import type { Box, Point } from "../../base/index.ts";

/** Where lines of a net end or are joined. All places are in pixels of the picture. */
export interface NetNode {
  readonly at: Point;
  /** A free end, be it at a part or a word; or where lines meet: a dot, a T, a terminal on the way. */
  readonly kind: "end" | "joint";
  readonly terminals: readonly string[];
}

/** A line of a net between two nodes, by their numbers. */
export interface NetRun {
  readonly from: number;
  readonly to: number;
  /**
   * Both ends and the corners between them, straight pieces from one to the next. Crossings and holes in
   * the print are passed; a line that jumps another runs straight.
   */
  readonly points: readonly Point[];
}

export interface TracedNet {
  /** The same whenever the same is traced on the same page. */
  readonly id: string;
  readonly nodes: readonly NetNode[];
  readonly runs: readonly NetRun[];
  /** Names of all terminals that it joins. */
  readonly terminals: readonly string[];
  readonly box: Box;
}

/** A place where the picture can't tell whether lines are joined. Nothing is joined there. */
export interface LineQuestion {
  /** A dot or a plain crossing; a hole in the print or two lines that stop. */
  readonly kind: "dot" | "gap";
  readonly at: Point;
  readonly isLikelier: "joined" | "apart";
  /** Ids of the nets that would be one if it were answered with "joined". */
  readonly nets: readonly string[];
}

export interface Traced {
  readonly nets: readonly TracedNet[];
  readonly questions: readonly LineQuestion[];
  /** Whether the paper's grain looks so much like lines that nothing was asked, and little joined. */
  readonly isTooRough: boolean;
}
