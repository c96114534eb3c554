import type { ReadWord } from "../../../../src/session/index.ts";
import { type PrintedText, sweeperLabels } from "../../../support/sweeper-print.ts";

/** A printed text as a reader without fault would hand it over. */
export const readRight = ({ text, box, turn, tall }: PrintedText): ReadWord => ({
  id: `${Math.round(box.left)},${Math.round(box.top)}`,
  box,
  turn,
  tall,
  text: text.replace(/\s+/g, " "),
  sure: 96,
  doubts: [],
  isPrint: true,
  others: [],
});

/** All that is printed on the demo's diagram, read without fault. */
export const sweeperWords = (): readonly ReadWord[] => sweeperLabels().map(readRight);
