import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import { expect } from "vitest";
import type { Box } from "../../../src/base/index.ts";
import { followLines } from "../../../src/scan/lines/follow.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

/** Pixels across a small sheet, to its middle, and across the pen. */
export const SIZE = 200;
export const MIDDLE = 100;
export const LINE = 4;

/** Follows what a pen draws on a small sheet, and says which lines are one where asked. */
export function followed(draw: (pen: SKRSContext2D) => void, parts: readonly Box[] = []) {
  const pen = createCanvas(SIZE, SIZE).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, SIZE, SIZE);
  pen.fillStyle = pen.strokeStyle = "black";
  pen.lineWidth = LINE;
  draw(pen);
  const { data } = pen.getImageData(0, 0, SIZE, SIZE);
  const page = finished(preparePage(greyFrom({ width: SIZE, height: SIZE, data })));
  const { skeleton, netOf, questions, bridges } = finished(
    followLines(page, { parts, words: [], answers: [] }),
  );
  const netAt = (x: number, y: number): number => {
    const stretch = skeleton.stretches.findIndex(({ pixels }) =>
      pixels.some((at) => Math.hypot((at % SIZE) - x, Math.floor(at / SIZE) - y) <= LINE),
    );
    expect(stretch, `no line at ${x}, ${y}`).toBeGreaterThanOrEqual(0);
    return netOf[stretch] as number;
  };
  return {
    isOne: (a: readonly [number, number], b: readonly [number, number]) =>
      netAt(...a) === netAt(...b),
    questions,
    bridges,
  };
}

/** Where lines through its middle run. */
export const LEFT = [30, MIDDLE] as const;
export const RIGHT = [170, MIDDLE] as const;
export const TOP = [MIDDLE, 30] as const;
export const BOTTOM = [MIDDLE, 170] as const;

/** What a pen draws there. */
export const line = (pen: SKRSContext2D, ...points: readonly (readonly [number, number])[]) => {
  pen.beginPath();
  points.forEach(([x, y], n) => {
    if (n === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.stroke();
};
export const across = (pen: SKRSContext2D) => line(pen, [15, MIDDLE], [185, MIDDLE]);
export const down = (pen: SKRSContext2D) => line(pen, [MIDDLE, 15], [MIDDLE, 185]);
export const dot = (pen: SKRSContext2D, widths: number) => {
  pen.beginPath();
  pen.arc(MIDDLE, MIDDLE, (widths * LINE) / 2, 0, 2 * Math.PI);
  pen.fill();
};
export const hole = (pen: SKRSContext2D, x: number, y: number, size: number) => {
  pen.fillStyle = "white";
  pen.fillRect(x - size / 2, y - size / 2, size, size);
  pen.fillStyle = "black";
};
