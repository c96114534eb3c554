import type { Point } from "../../base/index.ts";
import { type Branch, bendBetween, type Heading, headingOf } from "./branch.ts";
import { darkness } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Zone } from "./zones.ts";

/** Degrees, and line widths aside, between two halves of a line that runs on through letters. */
const RUNS_ON = 12;
const ASIDE = 0.8;
/** Cosine between two halves that bend a little more than `RUNS_ON`. */
const HARDLY_ON = -Math.cos(((RUNS_ON + 1) * Math.PI) / 180);
/** As dark as that a line is all along where it runs on. */
const DARK = 0.6;

/**
 * Branches that are plainly one line, whatever else meets them: straight on, and dark all the way.
 * `ways` are the branches' places, looked at for `seen` line widths.
 */
export function straightPairs(
  page: PreparedPage,
  zone: Zone,
  branches: readonly Branch[],
  ways: readonly (readonly Point[])[],
  seen: number,
): (readonly [Branch, Branch])[] {
  const { lineWidth } = page;
  const found: { readonly a: number; readonly b: number; readonly bend: number }[] = [];
  // A corner may be near: where the whole piece is not straight, its beginning may be.
  for (const length of [seen, seen / 2, seen / 4, seen / 8]) {
    const far = zone.radius + length * lineWidth;
    const headings = ways.map(
      (way) => headingOf(way, zone.at, zone.radius, far) ?? headingOf(way, zone.at, 0, far),
    );
    // Grain makes one place of thousands of lines: most pairs are told apart without more ado.
    const alongX = Float64Array.from(headings, (one) => one?.along[0] ?? 0);
    const alongY = Float64Array.from(headings, (one) => one?.along[1] ?? 0);
    for (let a = 0; a < ways.length; a++) {
      const [ax, ay] = [alongX[a] as number, alongY[a] as number];
      for (let b = a + 1; b < ways.length; b++) {
        if (ax * (alongX[b] as number) + ay * (alongY[b] as number) > HARDLY_ON) continue;
        const [one, other] = [headings[a], headings[b]];
        if (!one || !other) continue;
        if (asideOf(one, other) > ASIDE * lineWidth) continue;
        const bend = bendBetween(one.along, other.along);
        if (bend > RUNS_ON) continue;
        if (isDarkBetween(page, one.at, other.at)) found.push({ a, b, bend });
      }
    }
  }
  const used = new Set<number>();
  return found
    .sort((one, other) => one.bend - other.bend)
    .flatMap(({ a, b }) => {
      if (used.has(a) || used.has(b)) return [];
      used.add(a).add(b);
      return [[branches[a] as Branch, branches[b] as Branch] as const];
    });
}

/** Pixels between the middle of one heading and the line of the other. */
function asideOf({ at: [x, y], along }: Heading, { at: [u, v] }: Heading): number {
  return Math.abs((u - x) * along[1] - (v - y) * along[0]);
}

function isDarkBetween(page: PreparedPage, [x, y]: Point, [u, v]: Point): boolean {
  const steps = Math.max(1, Math.ceil(Math.hypot(u - x, v - y)));
  for (let n = 0; n <= steps; n++) {
    const [px, py] = [x + ((u - x) * n) / steps, y + ((v - y) * n) / steps];
    if (darkness(page, px, py) < DARK) return false;
  }
  return true;
}
