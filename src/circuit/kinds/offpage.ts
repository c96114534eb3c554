import type { PartKind } from "./kind.ts";
import { line, outline } from "./strokes.ts";

/** Where a line leaves the traced part of the diagram; its label is drawn by the board. */
export const offpage: PartKind<"offpage"> = {
  kind: "offpage",
  title: "page end",
  letter: "X",
  defaults: () => ({}),
  pins: () => [{ id: "1", at: [0, 0] }],
  elements: () => [],
  terminal: () => "page-end",
  failures: [],
  draw: () => [
    line([0, 0], [0.8, 0]),
    outline([0.8, -0.9], [2.2, -0.9], [3.1, 0], [2.2, 0.9], [0.8, 0.9]),
  ],
};
