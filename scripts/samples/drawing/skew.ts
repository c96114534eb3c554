import { add, type Point, scale, subtract, turn } from "../../../src/base/index.ts";
import type { Part } from "../../../src/job/index.ts";

/** How the paper lay on the scanner: turned about its middle, shrunk a little, shifted. */
export interface Skew {
  /** Degrees clockwise. */
  readonly degrees: number;
  readonly scale: number;
  /** Pixels. */
  readonly shift: Point;
  readonly centre: Point;
}

/** From the drawing's pixels to the scan's. */
export const toScan = (skew: Skew, point: Point): Point =>
  add(
    add(skew.centre, skew.shift),
    scale(turn(subtract(point, skew.centre), skew.degrees), skew.scale),
  );

/** From the scan's pixels back to the drawing's. */
export const fromScan = (skew: Skew, point: Point): Point =>
  add(
    skew.centre,
    turn(scale(subtract(subtract(point, skew.centre), skew.shift), 1 / skew.scale), -skew.degrees),
  );

const rounded = (value: number): number => Math.round(value * 100) / 100;

export const roundedPoint = ([x, y]: Point): [number, number] => [rounded(x), rounded(y)];

/** The part as it lies over the scan. */
export function partOnScan(skew: Skew, part: Part): Part {
  const moved = {
    ...part,
    at: roundedPoint(toScan(skew, part.at)),
    turn: rounded(part.turn + skew.degrees),
    ...(part.unit === undefined ? {} : { unit: rounded(part.unit * skew.scale) }),
  };
  if (moved.kind !== "module") return moved;
  return {
    ...moved,
    ...(moved.size ? { size: roundedPoint(scale(moved.size, skew.scale)) } : {}),
    pins: moved.pins.map((pin) =>
      pin.at ? { ...pin, at: roundedPoint(scale(pin.at, skew.scale)) } : pin,
    ),
  };
}
