import type { Session } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Ink } from "../drawing/ink.ts";
import type { Press } from "../gestures/gesture.ts";

/** Something drawn over the picture that is no part of the job yet: proposals, questions, a net lit up. */
export interface ScanLayer {
  /** Draws it, over the trace; the canvas is in pixels of the sheet. */
  readonly draw: (ink: Ink, board: Board) => void;
  /** Calls `redraw` whenever there is something else to draw. Returns the call that ends that. */
  readonly watch: (session: Session, redraw: () => void) => () => void;
  /** What a tap there would do, before any tool; null where the layer has nothing to be tapped there. */
  readonly tap?: (board: Board, at: Press) => (() => void) | null;
}
