import type { Point } from "../../../src/base/index.ts";
import { hills } from "./noise.ts";

const FOLD_SEED = 71;
const STAIN_SEED = 72;

/** A crease across the paper, in the drawing's pixels. */
export interface Fold {
  readonly x?: number;
  readonly y?: number;
  /** 0 to 1. */
  readonly strength: number;
}

/** A ring left by a wet mug, or a drop of oil where `ring` is 0. */
export interface Stain {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Width of the dark rim, pixels; 0 for a soft blot. */
  readonly ring: number;
  readonly strength: number;
}

const wander = hills(FOLD_SEED, 90);
const rough = hills(FOLD_SEED + 1, 3);

/** What a fold does at a point: light added or taken (-1..1), and the share of ink that is worn off. */
export function foldAt(fold: Fold, x: number, y: number): { light: number; worn: number } {
  const off = fold.x !== undefined ? x - fold.x : y - (fold.y ?? 0);
  if (Math.abs(off) > 40) return { light: 0, worn: 0 };
  const along = fold.x !== undefined ? y : x;
  const bend = off + wander(along, 0) * 2.5;
  const crack = Math.exp(-((bend / 2.2) ** 2));
  // one flank catches the lamp, the other lies in shade
  const flank = Math.sign(bend) * Math.exp(-Math.abs(bend) / 11) * (1 - crack);
  return {
    light: fold.strength * (flank * 0.55 - crack * 0.75),
    worn: fold.strength * crack * (0.35 + 0.25 * rough(x, y)),
  };
}

const uneven = hills(STAIN_SEED, 60);
const blotches = hills(STAIN_SEED + 1, 150);

/** How brown the paper is there, 0 to about 1. */
export function stainAt(stain: Stain, x: number, y: number): number {
  const dx = x - stain.x;
  const dy = y - stain.y;
  const far = stain.radius + stain.ring + 60;
  if (Math.abs(dx) > far || Math.abs(dy) > far) return 0;
  const distance = Math.hypot(dx, dy) + uneven(x, y) * stain.radius * 0.05;
  const inside = 1 / (1 + Math.exp((distance - stain.radius) / (stain.ring > 0 ? 3 : 22)));
  if (stain.ring === 0) return stain.strength * inside * (0.85 + 0.15 * uneven(y, x));
  // the mug stood on one side of the ring more than on the other
  const weight = 0.55 + 0.45 * blotches(x * 0.8, y * 0.8);
  const rim = Math.exp(-(((distance - stain.radius + stain.ring) / stain.ring) ** 2));
  return stain.strength * (0.16 * inside + rim * Math.max(0.12, weight));
}

const HOLE_RADIUS = 34;

/** 1 inside a punched hole, with a soft rim. */
export function holeAt(holes: readonly Point[], x: number, y: number): number {
  let inside = 0;
  for (const [holeX, holeY] of holes) {
    if (Math.abs(x - holeX) > 60 || Math.abs(y - holeY) > 60) continue;
    const distance = Math.hypot(x - holeX, y - holeY);
    inside = Math.max(inside, 1 / (1 + Math.exp(distance - HOLE_RADIUS)));
  }
  return inside;
}
