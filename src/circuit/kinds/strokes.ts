import type { Point } from "../../base/index.ts";
import type { Stroke } from "./kind.ts";

/** A line through the points. */
export const line = (...points: readonly Point[]): Stroke => ({ draw: "line", points });

export const dashed = (...points: readonly Point[]): Stroke => ({
  draw: "line",
  points,
  dashed: true,
});

/** A closed outline through the points. */
export const outline = (...points: readonly Point[]): Stroke => ({
  draw: "line",
  points,
  closed: true,
});

/** A filled shape with these corners. */
export const filled = (...points: readonly Point[]): Stroke => ({
  draw: "line",
  points,
  closed: true,
  filled: true,
});

/** A box by its left top and right bottom corner. */
export const box = ([left, top]: Point, [right, bottom]: Point): Stroke =>
  outline([left, top], [right, top], [right, bottom], [left, bottom]);

export const circle = (at: Point, radius: number): Stroke => ({ draw: "circle", at, radius });

/** A dot: lines that meet here are joined. */
export const dot = (at: Point, radius = 0.25): Stroke => ({
  draw: "circle",
  at,
  radius,
  filled: true,
});

/** From one angle to the other, degrees clockwise from the x axis. */
export const arc = (at: Point, radius: number, from: number, to: number): Stroke => ({
  draw: "arc",
  at,
  radius,
  from,
  to,
});

export const text = (
  at: Point,
  words: string,
  size = 1.4,
  align: "left" | "centre" | "right" = "centre",
): Stroke => ({ draw: "text", at, text: words, size, align });
