import { type Random, seededRandom } from "../../../src/base/index.ts";

/** Near enough to a bell curve: mean 0, deviation 1. */
export const bell = (random: Random): number =>
  (random.next() + random.next() + random.next() - 1.5) * 2;

/** A smooth field in -1..1 whose hills are about `size` pixels apart. */
export function hills(seed: number, size: number): (x: number, y: number) => number {
  const SIDE = 256;
  const random = seededRandom(seed);
  const lattice = Float32Array.from({ length: SIDE * SIDE }, () => random.next() * 2 - 1);
  const at = (column: number, row: number) =>
    lattice[(row & (SIDE - 1)) * SIDE + (column & (SIDE - 1))] ?? 0;
  const ease = (t: number) => t * t * (3 - 2 * t);
  return (x, y) => {
    const column = Math.floor(x / size);
    const row = Math.floor(y / size);
    const across = ease(x / size - column);
    const down = ease(y / size - row);
    const top = at(column, row) * (1 - across) + at(column + 1, row) * across;
    const bottom = at(column, row + 1) * (1 - across) + at(column + 1, row + 1) * across;
    return top * (1 - down) + bottom * down;
  };
}
