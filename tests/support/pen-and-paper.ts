import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import type { Point } from "../../src/base/index.ts";
import {
  finished,
  greyFrom,
  type LineContext,
  type PreparedPage,
  preparePage,
  type Traced,
  traceLines,
} from "../../src/scan/index.ts";

/** Width and height of a sheet in pixels, and the width of its lines. */
export const SIZE = 240;
export const LINE = 4;

/** What a pen draws on a square sheet so many pixels wide, made ready for following lines. */
export function drawnPage(size: number, draw: (pen: SKRSContext2D) => void): PreparedPage {
  const pen = createCanvas(size, size).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, size, size);
  pen.fillStyle = pen.strokeStyle = "black";
  pen.lineWidth = LINE;
  draw(pen);
  const { data } = pen.getImageData(0, 0, size, size);
  return finished(preparePage(greyFrom({ width: size, height: size, data })));
}

/** Every net of what a pen draws on a small sheet. */
export function traced(
  draw: (pen: SKRSContext2D) => void,
  terminals: Readonly<Record<string, Point>> = {},
  context: Partial<LineContext> = {},
): Traced {
  const page = drawnPage(SIZE, draw);
  const known = { parts: [], words: [], answers: [], ...context };
  return finished(traceLines(page, known, terminals, "all"));
}

export function line(pen: SKRSContext2D, ...points: readonly Point[]): void {
  pen.beginPath();
  points.forEach(([x, y], n) => {
    if (n === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.stroke();
}

export function dot(pen: SKRSContext2D, [x, y]: Point, widths: number): void {
  pen.beginPath();
  pen.arc(x, y, (widths * LINE) / 2, 0, 2 * Math.PI);
  pen.fill();
}

/** A square of paper again, its middle and its sides in pixels. */
export function hole(pen: SKRSContext2D, [x, y]: Point, wide: number, high = wide): void {
  pen.fillStyle = "white";
  pen.fillRect(x - wide / 2, y - high / 2, wide, high);
  pen.fillStyle = "black";
}
