import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import { AGED } from "../../scripts/samples/ageing/age.ts";
import { toScan } from "../../scripts/samples/drawing/skew.ts";
import { drawSweeperPage } from "../../scripts/samples/sweeper/page.ts";
import type { Box, Point } from "../../src/base/index.ts";

/** One text as it was printed on the demo's sheet, and where it lies on the scan. */
export interface PrintedText {
  readonly text: string;
  /** Around its capitals, pixels of the scan. */
  readonly box: Box;
  readonly turn: 0 | 270;
  /** Height of its capitals, pixels of the scan. */
  readonly tall: number;
}

/** Capitals are so much of the size of IBM Plex Sans (its own metrics: 698 of 1000). */
const CAPITAL = 0.698;

/** Every text of the demo's sheet: what the drawing's own code writes, heard as it is written. */
export function sweeperPrint(): readonly PrintedText[] {
  const heard: PrintedText[] = [];
  const pens = Object.getPrototypeOf(createCanvas(2, 2).getContext("2d")) as SKRSContext2D;
  const { fillText } = pens;
  pens.fillText = function (this: SKRSContext2D, text: string, x: number, y: number) {
    heard.push(placed(this, text));
    return fillText.call(this, text, x, y);
  };
  try {
    drawSweeperPage();
  } finally {
    pens.fillText = fillText;
  }
  return heard;
}

function placed(pen: SKRSContext2D, text: string): PrintedText {
  const bare = text.trim();
  // What stands before it, such as the gap that sets a line of notes in.
  const before = pen.measureText(text.slice(0, text.indexOf(bare))).width;
  const width = pen.measureText(bare).width;
  const whole = pen.measureText(text).width;
  const { textAlign } = pen;
  const start = (textAlign === "center" ? -whole / 2 : textAlign === "right" ? -whole : 0) + before;
  const size = Number(/([\d.]+)px/.exec(pen.font)?.[1]);
  const half = (size * CAPITAL) / 2;
  const { a, b, c, d, e, f } = pen.getTransform();
  const at = (u: number, v: number): Point =>
    toScan(AGED.skew, [a * u + c * v + e, b * u + d * v + f]);
  const corners = [
    at(start, -half),
    at(start + width, -half),
    at(start, half),
    at(start + width, half),
  ];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return {
    text: bare,
    box: {
      left: Math.min(...xs),
      top: Math.min(...ys),
      right: Math.max(...xs),
      bottom: Math.max(...ys),
    },
    turn: Math.abs(b) > Math.abs(a) ? 270 : 0,
    tall: size * CAPITAL * AGED.skew.scale,
  };
}

/** Below this, pixels of the scan, stand the drawn plug, the notes and the title block, but for the left edge. */
const FOOT = { top: 1790, left: 560 };
const FRAME: Box = { left: 110, top: 110, right: 3400, bottom: 2100 };

/** What is printed on the diagram itself: names, values, labels, wire prints, marks. */
export const sweeperLabels = (): readonly PrintedText[] =>
  sweeperPrint().filter(
    ({ box }) =>
      box.left > FRAME.left &&
      box.right < FRAME.right &&
      box.top > FRAME.top &&
      box.bottom < FRAME.bottom &&
      (box.bottom < FOOT.top || box.right < FOOT.left),
  );
