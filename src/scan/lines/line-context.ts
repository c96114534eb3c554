import type { Box, Point } from "../../base/index.ts";

/** What a user said of one place, in pixels of the picture. */
export interface LineAnswer {
  readonly at: Point;
  /** Whether the lines there are one. */
  readonly joined: boolean;
  /** Whether what is there is no line, from one joint or end to the next; `joined` is false then. */
  readonly stray?: boolean | undefined;
}

/** What is known of a picture besides its pixels; all in pixels of it, a pixel's middle at a half. */
export interface LineContext {
  /** Boxes of parts: no line is followed inside one. */
  readonly parts: readonly Box[];
  /** Boxes of words: nothing in one is a line, but for a line that runs through it. */
  readonly words: readonly Box[];
  readonly answers: readonly LineAnswer[];
}
