import type { Lab } from "./colour-difference.ts";
import { middleColour } from "./wire-surroundings.ts";

/** Base, stripe, gleam and shaded side. */
const GROUPS = 4;
/** Lightness counts less than hue: a round wire is dark at its sides. */
const LIGHTNESS = 0.5;

/** Colours in four groups by nearness (k-means), each begun with what is farthest from those before. */
export function colourGroups(colours: readonly Lab[]): Uint8Array {
  const near = ([l, a, b]: Lab, [l2, a2, b2]: Lab) =>
    (LIGHTNESS * (l - l2)) ** 2 + (a - a2) ** 2 + (b - b2) ** 2;
  const centres: Lab[] = [middleColour(colours)];
  const off = colours.map((colour) => near(colour, centres[0] as Lab));
  while (centres.length < GROUPS) {
    // The farthest of all are noise at an edge.
    const edge = Float64Array.from(off).sort()[Math.floor(off.length * 0.97)] ?? 0;
    const centre = colours[off.indexOf(edge)] ?? (centres[0] as Lab);
    centres.push(centre);
    colours.forEach((colour, index) => {
      off[index] = Math.min(off[index] as number, near(colour, centre));
    });
  }
  const group = new Uint8Array(colours.length);
  for (let turn = 0; turn < 8; turn++) {
    const sums = centres.map(() => [0, 0, 0, 0]) as [number, number, number, number][];
    colours.forEach((colour, index) => {
      let which = 0;
      for (let other = 1; other < centres.length; other++) {
        if (near(colour, centres[other] as Lab) < near(colour, centres[which] as Lab))
          which = other;
      }
      group[index] = which;
      const sum = sums[which] as [number, number, number, number];
      for (let i = 0; i < 3; i++) sum[i as 0] += colour[i as 0];
      sum[3]++;
    });
    sums.forEach(([l, a, b, count], which) => {
      if (count > 0) centres[which] = [l / count, a / count, b / count];
    });
  }
  return group;
}
