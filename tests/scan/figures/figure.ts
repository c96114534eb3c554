import type { Point } from "../../../src/base/index.ts";

/** A published figure: boxes and terminals are measured on the picture, in its pixels. */
export interface Figure {
  readonly file: string;
  /** Left, top, right, bottom. */
  readonly parts: Readonly<Record<string, readonly [number, number, number, number]>>;
  readonly terminals: Readonly<Record<string, Point>>;
  /** What is joined, as the figure letters or draws it. */
  readonly nets: readonly (readonly string[])[];
}
