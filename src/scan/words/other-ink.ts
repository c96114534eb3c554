import type { Box } from "../../base/index.ts";
import type { Component } from "../components.ts";
import { type CropSource, EDGE } from "./cut-crop.ts";
import { extentIn } from "./neighbours.ts";
import type { WordLine } from "./word-lines.ts";

/** What a row of letters stands among. */
export interface InkSource extends CropSource {
  readonly list: readonly Component[];
  /** Of each piece, whether it is a letter of some row. */
  readonly inRows: Uint8Array;
}

/** A row of letters on its page. */
export interface RowAt {
  readonly box: Box;
  readonly way: WordLine["way"];
  /** Labels of its pieces. */
  readonly own: ReadonlySet<number>;
  /** Height of its letters, pixels. */
  readonly tall: number;
}

/** All in heights of the letters. So much of their heads and feet is not looked at. */
const INNER = 0.12;
/** A line that ends or runs so near to a row's end may hide a letter. */
const AT_LINE = 0.15;
/** Ink so near to the row's ends may be a letter that has grown together with something. */
const CLOSE = 0.4;
/** Up to here a piece no larger than a letter may be one. */
const NEAR = 0.75;
/** A letter sticks out of its row by no more than this, and is at least so tall. */
const OUT = 0.35;
const LEAST_TALL = 0.4;
/** More of its box than this has ink in a dot, and less in a letter that is not a mere stroke. */
const SOLID = 0.7;
const STROKE = 0.45;
/** A bar of a symbol is flatter and longer than this, in heights, and no sign of a word. */
const BAR = [0.34, 0.4] as const;
/** So much ink, in squares of the letters' height, is no dust. */
const LEAST = 0.03;

/** Up to here, in heights of the letters, letters that have grown together with a line may go on. */
const TORN = 1.3;
/** A line or an arc is met once on the way; letters on most ways more often: on more than this share. */
const TWICE = 0.5;
/** No letter of another row is taller. */
const LARGEST = 1.6;

/**
 * Whether beyond an end of a row lie remains of letters that a slanting or hand-drawn line, a scratch or the like has
 * grown together with: nothing else crosses so many of the ways along the row twice.
 */
export function goesOnTorn(
  { labels, lines, flat, list, inRows }: InkSource,
  { box, way, own, tall }: RowAt,
): boolean {
  const { width, height } = flat;
  const { from, to, low, high } = extentIn(box, way);
  const inner = Math.round(INNER * tall);
  const reach = Math.round(TORN * tall);
  /** Whether it is a letter of another row; a line that slants may have been taken for a huge one. */
  const isOfRow = (label: number): boolean => {
    const { left, right, top, bottom } = list[label - 1] as Component;
    const across = way === "level" ? bottom - top : right - left;
    return inRows[label - 1] === 1 && across < LARGEST * tall;
  };
  const isTorn = (first: number, last: number) => {
    let twice = 0;
    for (let across = low + inner; across <= high - inner; across++) {
      let runs = 0;
      let isIn = false;
      for (let along = first; along <= last; along++) {
        const [x, y] = way === "level" ? [along, across] : [across, along];
        if (x < 0 || y < 0 || x >= width || y >= height) continue;
        const at = y * width + x;
        const label = labels[at] as number;
        const isOther = label !== 0 && !own.has(label) && !isOfRow(label);
        if (isOther && !isIn) runs++;
        isIn = isOther || (isIn && lines.data[at] === 1);
      }
      if (runs > 1) twice++;
    }
    return twice > TWICE * (high - low + 1 - 2 * inner);
  };
  return isTorn(from - reach, from - 1) || isTorn(to + 1, to + reach);
}

/**
 * Whether ink that was cut away from a row of letters, being none of its own, lies among them or
 * at its ends: what is read may lack a letter.
 */
export function hasOtherInk(
  { flat, labels, lines, list }: InkSource,
  { box, way, own, tall }: RowAt,
): boolean {
  const { width, height } = flat;
  const isLevel = way === "level";
  const inner = Math.round(INNER * tall);
  const near = Math.round(NEAR * tall);
  const { from, to, low, high } = extentIn(box, way);
  /** How far beyond the row's ends, 0 within. */
  const beyond = (along: number) => Math.max(0, from - along, along - to);

  /** How far beyond the row's ends a piece of ink may still be a letter or hide one. */
  const reachOf = (label: number): number => {
    const { left, right, top, bottom, area } = list[label - 1] as Component;
    const size = [right - left + 1, bottom - top + 1] as const;
    const [along, across] = isLevel ? size : [size[1], size[0]];
    const [least, most] = isLevel ? [top, bottom] : [left, right];
    const isDot =
      area > SOLID * along * across && Math.min(along, across) > STROKE * Math.max(along, across);
    const isLetter =
      !isDot &&
      across >= LEAST_TALL * tall &&
      least >= low - OUT * tall &&
      most <= high + OUT * tall;
    const isBar = across < BAR[0] * tall && along > BAR[1] * tall;
    return (isLetter ? NEAR : isBar ? 0 : CLOSE) * tall;
  };
  const isOwnNear = (x: number, y: number): boolean => {
    for (let v = Math.max(0, y - EDGE); v <= Math.min(height - 1, y + EDGE); v++) {
      for (let u = Math.max(0, x - EDGE); u <= Math.min(width - 1, x + EDGE); u++) {
        if (own.has(labels[v * width + u] as number)) return true;
      }
    }
    return false;
  };
  let lineInk = 0;
  /** Of each other piece: how near it comes, and how much of it lies in sight. */
  const others = new Map<number, { nearest: number; ink: number }>();
  const meet = (at: number, far: number) => {
    const label = labels[at] as number;
    if (label === 0) {
      if (far <= AT_LINE * tall) lineInk++;
      return;
    }
    const known = others.get(label);
    if (!known) others.set(label, { nearest: far, ink: 1 });
    else {
      known.nearest = Math.min(known.nearest, far);
      known.ink++;
    }
  };
  const [left, right] = isLevel ? [from - near, to + near] : [low + inner, high - inner];
  const [top, bottom] = isLevel ? [low + inner, high - inner] : [from - near, to + near];
  for (let y = Math.max(0, top); y <= Math.min(height - 1, bottom); y++) {
    for (let x = Math.max(0, left); x <= Math.min(width - 1, right); x++) {
      const at = y * width + x;
      const label = labels[at] as number;
      if ((label === 0 && lines.data[at] === 0) || own.has(label) || isOwnNear(x, y)) continue;
      meet(at, beyond(isLevel ? x : y));
    }
  }
  const pieces = [...others].filter(
    ([label, { nearest }]) => nearest === 0 || nearest <= reachOf(label),
  );
  return lineInk + pieces.reduce((sum, [, { ink }]) => sum + ink, 0) > LEAST * tall * tall;
}
