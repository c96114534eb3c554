import { fileURLToPath } from "node:url";
import { type Canvas, createCanvas, GlobalFonts, type SKRSContext2D } from "@napi-rs/canvas";
import type { Point } from "../../../src/base/index.ts";

export const INK = "#141414";
const FACE = "Sample Plex";
const FONTS = "../../../node_modules/@expo-google-fonts/ibm-plex-sans";

for (const file of ["400Regular/IBMPlexSans_400Regular", "600SemiBold/IBMPlexSans_600SemiBold"]) {
  GlobalFonts.registerFromPath(
    fileURLToPath(new URL(`${FONTS}/${file}.ttf`, import.meta.url)),
    FACE,
  );
}

export interface TextStyle {
  /** Pixels. */
  readonly size: number;
  readonly align?: "left" | "center" | "right";
  readonly bold?: boolean;
  /** Degrees clockwise about the point. */
  readonly turn?: number;
}

export interface Page {
  readonly canvas: Canvas;
  readonly pen: SKRSContext2D;
}

/** White paper of so many pixels. */
export function blankPage(width: number, height: number): Page {
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, width, height);
  pen.strokeStyle = INK;
  pen.fillStyle = INK;
  pen.lineCap = "round";
  pen.lineJoin = "round";
  return { canvas, pen };
}

export function drawLine({ pen }: Page, points: readonly Point[], width: number): void {
  pen.lineWidth = width;
  pen.beginPath();
  points.forEach(([x, y], index) => {
    if (index === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.stroke();
}

export function drawBox(page: Page, [left, top]: Point, [right, bottom]: Point, width: number) {
  drawLine(
    page,
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
      [left, top],
    ],
    width,
  );
}

/** Text whose middle line runs through `at`. */
export function drawText({ pen }: Page, words: string, [x, y]: Point, style: TextStyle): void {
  pen.save();
  pen.translate(x, y);
  pen.rotate(((style.turn ?? 0) * Math.PI) / 180);
  pen.font = `${style.bold ? 600 : 400} ${style.size}px "${FACE}"`;
  pen.textAlign = style.align ?? "left";
  pen.textBaseline = "middle";
  pen.fillText(words, 0, 0);
  pen.restore();
}
