import type { Box, Point } from "../../../src/base/index.ts";
import {
  finished,
  type Grey,
  preparePage,
  type Traced,
  traceLines,
} from "../../../src/scan/index.ts";

/** What is known of a picture besides its pixels, in pixels of it. */
export interface TraceInput {
  readonly terminals: Readonly<Record<string, Point>>;
  readonly parts: readonly Box[];
}

/** Every net of a picture that a terminal names, as the program traces it in one go. */
export function tracedPicture(grey: Grey, { terminals, parts }: TraceInput): Traced {
  const page = finished(preparePage(grey));
  return finished(traceLines(page, { parts, words: [], answers: [] }, terminals, "with-terminals"));
}
