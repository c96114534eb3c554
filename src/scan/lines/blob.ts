import { darkness } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { SolidInk } from "./solid-ink.ts";
import type { Zone } from "./zones.ts";

/** Half the smallest dot, in widths of its lines; the ink where two lines cross squarely reaches 0.71. */
const SOLID_DOT = 1.17;
/** Of a blob's disc so much, across and in all, is at least so dark, as a share of a line's middle. */
const SOLID_SHARE = 0.8;
const DARK = 0.6;
/** Half a disc, in line widths, of which all but a speck is so dark, as a share of solid ink. */
const DARK_DISC = 1;
const DARK_AS_INK = 0.75;
const ALL_BUT_A_SPECK = 0.95;
/** In line widths, a pixel at least: between the places at which such a disc is looked for. */
const STEP = 0.2;
/** ... and no place of a dot reaches so far: grain makes one place of half a page. */
const FAR = 8;

/** Whether so much solid ink is at a place that it must be a dot. */
export const hasDot = ({ blob, lineWidth }: Zone): boolean => blob >= SOLID_DOT * lineWidth;

/** Whether the disc of a blob is as dark as lines are nearly all over: pale letters are not. */
export function isSolid(page: PreparedPage, { blobAt: [x, y], blob }: Zone): boolean {
  const reach = SOLID_SHARE * blob;
  let [dark, all] = [0, 0];
  for (let dy = -reach; dy <= reach; dy++) {
    for (let dx = -reach; dx <= reach; dx++) {
      if (dx * dx + dy * dy > reach * reach) continue;
      all++;
      if (darkness(page, x + dx, y + dy) >= DARK) dark++;
    }
  }
  return dark >= SOLID_SHARE * all;
}

/**
 * Whether somewhere at a place is a disc of solid ink two lines wide: neither two lines that cross nor
 * letters make one.
 */
export function hasDarkDisc({ page }: SolidInk, { at: [x, y], radius, lineWidth }: Zone): boolean {
  if (radius > FAR * lineWidth) return false;
  const step = Math.max(1, STEP * lineWidth);
  const reach = DARK_DISC * lineWidth;
  const across = Math.ceil((radius + reach) / step);
  const wide = 2 * across + 1;
  const isDark = new Uint8Array(wide * wide);
  for (let v = -across; v <= across; v++) {
    for (let u = -across; u <= across; u++) {
      if (darkness(page, x + u * step, y + v * step) >= DARK_AS_INK)
        isDark[(v + across) * wide + u + across] = 1;
    }
  }
  const far = reach / step;
  const middles = Math.floor(radius / step);
  for (let v = -middles; v <= middles; v++) {
    for (let u = -middles; u <= middles; u++) {
      if (u * u + v * v > middles * middles) continue;
      let [dark, all] = [0, 0];
      for (let dv = -Math.floor(far); dv <= far; dv++) {
        for (let du = -Math.floor(far); du <= far; du++) {
          if (du * du + dv * dv > far * far) continue;
          all++;
          dark += isDark[(v + dv + across) * wide + u + du + across] as number;
        }
      }
      if (dark >= ALL_BUT_A_SPECK * all) return true;
    }
  }
  return false;
}
