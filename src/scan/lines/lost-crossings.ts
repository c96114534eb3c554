import { boxAt, distance, type Point, spatialGrid } from "../../base/index.ts";
import type { Bits } from "../raster.ts";
import { bendBetween } from "./branch.ts";
import type { Facing } from "./facing.ts";

/** In line widths: two ends that face places so near to one another face the same corner. */
const ONE_CORNER = 2;
/** Degrees: lines that cross do so squarely, or nearly. */
const SQUARE = 25;
/** In line widths: so far round such a corner its lines are parted. */
const PARTED = 1.5;

/**
 * Thinned places of corners that two open ends face, one along each arm: a crossing that lost two of its
 * arms looks like that, and a corner says nothing of which lines are one there. Without them four ends
 * are left that face one another.
 */
export function lostCrossings(
  facings: readonly Facing[],
  { width, height, data }: Bits,
  lineWidth: number,
): ReadonlySet<number> {
  const plain = facings.filter(({ isSure, isDot }) => !isSure && !isDot);
  const reach = ONE_CORNER * lineWidth;
  const near = spatialGrid(
    plain.map(({ at }) => boxAt(at, 0)),
    reach,
  );
  const lost = new Set<number>();
  plain.forEach((one, n) => {
    for (const m of near.near(boxAt(one.at, reach))) {
      const other = plain[m] as Facing;
      if (m <= n || other.stretch !== one.stretch || distance(other.at, one.at) > reach) continue;
      if (Math.abs(bendBetween(one.end.onward, other.end.onward) - 90) > SQUARE) continue;
      for (const place of placesRound(one.at, PARTED * lineWidth)) lost.add(place);
    }
  });
  return lost;

  function* placesRound([x, y]: Point, far: number): Iterable<number> {
    for (let row = Math.max(0, Math.ceil(y - far)); row <= Math.min(height - 1, y + far); row++)
      for (let at = Math.max(0, Math.ceil(x - far)); at <= Math.min(width - 1, x + far); at++)
        if (data[row * width + at]) yield row * width + at;
  }
}
