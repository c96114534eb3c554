import { distanceToPaper } from "../../../src/scan/distance.ts";
import type { PreparedPage } from "../../../src/scan/lines/prepared-page.ts";
import { placesOf } from "../../../src/scan/lines/skeleton.ts";
import { bitsFromText, greyOf } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { thin } from "../../../src/scan/thinning.ts";

/** Darkness of ink by the sign that stands for it: full, and as faint as a smear. */
const DARKNESS: Readonly<Record<string, number>> = { "#": 255, "+": 90 };

/** A prepared page drawn by hand: `#` is ink, `+` faint ink, its lines `lineWidth` pixels wide. */
export function pageFromText(lines: readonly string[], lineWidth: number): PreparedPage {
  const ink = bitsFromText(lines.map((line) => line.replaceAll("+", "#")));
  const flat = greyOf(ink.width, ink.height);
  lines.forEach((line, y) => {
    for (let x = 0; x < flat.width; x++) {
      flat.data[y * flat.width + x] = 255 - (DARKNESS[line[x] ?? " "] ?? 0);
    }
  });
  const thinned = thin(ink);
  return {
    scale: 1,
    flat,
    full: 255,
    bare: 0,
    ink,
    thinned,
    places: finished(placesOf(thinned)),
    far: distanceToPaper(ink),
    lineWidth,
    spread: 0,
  };
}

/** The same line so many times. */
export const times = (count: number, line: string): string[] => Array(count).fill(line);
