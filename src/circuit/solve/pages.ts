import { type Id, type Part, type PinRef, pinRef } from "../../job/index.ts";
import { pageKey } from "../places.ts";
import type { Branch, Unknown } from "./branch.ts";
import type { Points } from "./points.ts";

interface PageEnd {
  readonly part: Id;
  readonly point: number;
  readonly is: string | undefined;
  readonly untraced: boolean;
}

/** What page ends are put among; `plus` and `minus` of the first battery, if there is one. */
export interface Ground {
  readonly parts: readonly Part[];
  readonly points: Points;
  own(ref: PinRef): number;
  readonly chassis: number;
  readonly plus: number | null;
  readonly minus: number | null;
}

/**
 * Joins page ends of equal label, and those of which the user has said what lies beyond to that.
 * One that stays alone goes on, nobody knows where.
 */
export function placePages(
  { parts, points, own, chassis, plus, minus }: Ground,
  systemVoltage: number,
): { branches: readonly Branch[]; unknowns: readonly Unknown[] } {
  const branches: Branch[] = [];
  const beyond: PageEnd[] = [];
  for (const page of joinPages(parts, points, own)) {
    if (page.is === "ground") points.join(page.point, chassis);
    else if (page.is === "supply") {
      if (plus !== null) points.join(page.point, plus);
      else branches.push(supplyBeyond(page, chassis, systemVoltage));
    } else if (page.untraced && page.is !== "unused") beyond.push(page);
  }
  const [first] = beyond;
  if (!first) return { branches, unknowns: [] };
  const posts = [plus, minus].flatMap((post) => (post === null ? [] : [post]));
  const unknown: Unknown = {
    part: first.part,
    nodes: [...beyond.map(({ point }) => point), chassis, ...posts],
    what: "what lies beyond a line that is not traced",
  };
  return { branches, unknowns: [unknown] };
}

const supplyBeyond = (
  { part, point }: PageEnd,
  chassis: number,
  systemVoltage: number,
): Branch => ({
  a: point,
  b: chassis,
  owner: part,
  element: null,
  gate: null,
  closedIn: null,
  acts: {
    is: "source",
    volts: systemVoltage * 1.05,
    low: systemVoltage * 0.99,
    high: systemVoltage * 1.1,
    ohms: 0.02,
  },
});

function joinPages(
  parts: readonly Part[],
  points: Points,
  own: (ref: PinRef) => number,
): readonly PageEnd[] {
  const counts = new Map<string, number>();
  for (const part of parts) {
    const key = part.kind === "offpage" ? pageKey(part) : null;
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return parts.flatMap((part): PageEnd[] => {
    if (part.kind !== "offpage") return [];
    const key = pageKey(part);
    const point = own(pinRef(part.id, "1"));
    if (key !== null) points.join(point, points.of(`page ${key}`));
    return [{ part: part.id, point, is: part.is, untraced: key === null || counts.get(key) === 1 }];
  });
}
