import type { SKRSContext2D } from "@napi-rs/canvas";
import { expect } from "vitest";
import type { Box } from "../../../src/base/index.ts";
import { followLines } from "../../../src/scan/lines/follow.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { drawnPage, LINE, line } from "../pen-and-paper.ts";

export { LINE, line };

/** Pixels across a small sheet, and to its middle. */
export const SIZE = 200;
export const MIDDLE = 100;

/** Follows what a pen draws on a small sheet, and says which lines are one where asked. */
export function followed(draw: (pen: SKRSContext2D) => void, parts: readonly Box[] = []) {
  const page = drawnPage(SIZE, draw);
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
