import { distance, type Point } from "../../base/index.ts";
import type { Candidate } from "./candidate.ts";
import { matrixOf, type Pose, placed } from "./pose.ts";
import { nearest, type SymbolPage } from "./symbol-page.ts";

/** A coil and the contact that it moves. */
export interface RelayFind {
  readonly coil: Candidate;
  readonly contact: Candidate;
  readonly link: number;
}

/** How far apart coil and contact are drawn, units of the contact. */
const NEAREST = 2;
const FARTHEST = 14;
/** Share of the way between them that must be drawn: a dashed line has gaps. */
export const LINKED = 0.45;

/** Middle of a contact's blade, units of the switch symbols. */
const BLADE: Point = [0, 0];

/**
 * Coils with a contact beside them, at the height of the coil's middle, and a line or dashes between
 * the two: relays as they are drawn in one piece.
 */
export function relaysOf(page: SymbolPage, candidates: readonly Candidate[]): RelayFind[] {
  const coils = candidates.filter(({ symbol }) => symbol.kind === "solenoid");
  const contacts = candidates.filter(({ symbol }) => symbol.kind === "switch" && !symbol.isClosed);
  const found: RelayFind[] = [];
  for (const coil of coils) {
    for (const contact of contacts) {
      if (!isBeside(coil.fit.pose, contact.fit.pose)) continue;
      const link = linkBetween(page, coil, contact);
      if (link >= LINKED) found.push({ coil, contact, link });
    }
  }
  return found;
}

/** Both lie along the same way, and the line between their middles across it. */
function isBeside(coil: Pose, contact: Pose): boolean {
  if ((coil.turn - contact.turn) % 180 !== 0) return false;
  const away = distance([coil.x, coil.y], [contact.x, contact.y]);
  if (away < NEAREST * contact.along || away > FARTHEST * contact.along) return false;
  const isUpright = contact.turn % 180 !== 0;
  const along = isUpright ? Math.abs(coil.y - contact.y) : Math.abs(coil.x - contact.x);
  return along < 1.2 * contact.along;
}

function linkBetween(page: SymbolPage, coil: Candidate, contact: Candidate): number {
  const { pose } = coil.fit;
  const to = placed(matrixOf(contact.fit.pose), BLADE);
  const isUpright = pose.turn % 180 !== 0;
  const half = coil.symbol.body.bottom * pose.across;
  const from: Point = isUpright
    ? [pose.x + Math.sign(to[0] - pose.x) * (half + page.line), pose.y]
    : [pose.x, pose.y + Math.sign(to[1] - pose.y) * (half + page.line)];
  let best = 0;
  for (const shift of [-1, -0.5, 0, 0.5, 1]) {
    const aside = shift * page.line * 1.5;
    const [a, b]: [Point, Point] = isUpright
      ? [
          [from[0], from[1] + aside],
          [to[0], from[1] + aside],
        ]
      : [
          [from[0] + aside, from[1]],
          [from[0] + aside, to[1]],
        ];
    best = Math.max(best, onLine(page, a, b));
  }
  return best;
}

function onLine(page: SymbolPage, a: Point, b: Point): number {
  const steps = Math.max(4, Math.round(distance(a, b) / (page.line / 2)));
  let on = 0;
  for (let n = 0; n <= steps; n++) {
    const share = n / steps;
    const far = nearest(page, a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share);
    if (far <= 0.6 * page.line) on++;
  }
  return on / (steps + 1);
}
