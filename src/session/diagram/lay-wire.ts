import { distance, type Point } from "../../base/index.ts";
import { type Id, type Job, ownerOf, type PinRef, pinRef, type Wire } from "../../job/index.ts";
import { draftWire, idSource, plain } from "./draft.ts";
import { addPart } from "./new-part.ts";
import { nearestOnLine, withoutIdleCorners } from "./polyline.ts";
import { tidyLeft } from "./remove.ts";
import { pointsOfWire, setPath, splitWire } from "./split-wire.ts";

/** What an end of a wire is laid to. */
export type WireEnd =
  | { readonly on: "pin"; readonly ref: PinRef }
  /** Joins a wire there: a splice is made. */
  | { readonly on: "wire"; readonly wire: Id; readonly at: Point }
  /** Goes on, not traced: a page end without a partner. */
  | { readonly on: "open"; readonly at: Point };

export interface WirePlan {
  readonly sheet: Id;
  readonly from: WireEnd;
  readonly to: WireEnd;
  /** Between the two ends, in order from `from`. */
  readonly corners: readonly Point[];
}

/** Where the ends of a laid wire lie; null when a pin does not exist. */
function placeOf(draft: Job, ref: PinRef): Point | null {
  const job = plain(draft);
  return pointsOfWire(job, { id: "", from: ref, to: ref })?.[0] ?? null;
}

/** Degrees clockwise, in quarters, of the way from `a` to `b`. */
export function quarterTowards(a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  if (Math.abs(dx) >= Math.abs(dy)) return dx >= 0 ? 0 : 180;
  return dy >= 0 ? 90 : 270;
}

/**
 * The pin that an end comes to, splice or untraced end made where needed. `before`: the point that
 * the wire comes from, so that an untraced end points onward.
 */
export function settleEnd(
  draft: Job,
  sheet: Id,
  end: WireEnd,
  before: Point,
  nextId: (letter: string) => Id,
): PinRef | null {
  if (end.on === "pin") return end.ref;
  if (end.on === "open") {
    const turn = quarterTowards(before, end.at);
    return pinRef(addPart(draft, "offpage", sheet, end.at, turn, nextId), "1");
  }
  return splitWire(draft, wireStillAt(draft, end.wire, end.at), end.at, nextId);
}

/** Of the halves that an earlier split in the same edit made of a wire, the one that runs by `at`. */
function wireStillAt(draft: Job, id: Id, at: Point): Id {
  const job = plain(draft);
  const wire = job.diagram.wires.find((one) => one.id === id);
  if (!wire) return id;
  const halves = [wire, ...job.diagram.wires.filter((one) => one.from === wire.to && one !== wire)];
  let best = id;
  let nearest = Number.POSITIVE_INFINITY;
  for (const half of halves) {
    const points = pointsOfWire(job, half);
    const away = points ? nearestOnLine(points, at)?.distance : undefined;
    if (away !== undefined && away < nearest) {
      nearest = away;
      best = half.id;
    }
  }
  return best;
}

const anchorOf = (draft: Job, end: WireEnd): Point | null =>
  end.on === "pin" ? placeOf(draft, end.ref) : end.at;

/**
 * Lays a wire with whatever splices and untraced ends it needs. Returns its id; null, with nothing
 * changed, when it would join a pin to itself or an end does not exist.
 */
export function layWire(draft: Job, plan: WirePlan): Id | null {
  const start = anchorOf(draft, plan.from);
  const end = anchorOf(draft, plan.to);
  if (!start || !end) return null;
  if (plan.from.on === "pin" && plan.to.on === "pin" && plan.from.ref === plan.to.ref) return null;
  if (plan.corners.length === 0 && distance(start, end) < 1) return null;
  const nextId = idSource(draft);
  const corners = withoutIdleCorners(start, plan.corners, end);
  const from = settleEnd(draft, plan.sheet, plan.from, corners[0] ?? end, nextId);
  const to = settleEnd(draft, plan.sheet, plan.to, corners.at(-1) ?? start, nextId);
  if (from === null || to === null) return null;
  const wire: Wire = { id: nextId("W"), from, to };
  setPath(wire, corners);
  draft.diagram.wires.push(wire);
  return wire.id;
}

/** Takes an end of a wire to another place. Nothing happens when it would join a pin to itself. */
export function moveWireEnd(
  draft: Job,
  id: Id,
  which: "from" | "to",
  end: WireEnd,
  corners: readonly Point[],
): void {
  const job = plain(draft);
  const wire = job.diagram.wires.find((one) => one.id === id);
  const points = wire && pointsOfWire(job, wire);
  if (!wire || !points) return;
  const other = which === "from" ? wire.to : wire.from;
  if (end.on === "pin" && end.ref === other) return;
  // A wire can't be joined to itself: its own middle is no place for its end.
  if (end.on === "wire" && end.wire === id) return;
  const sheet = job.diagram.parts.find((part) => other.startsWith(`${part.id}:`))?.sheet;
  if (sheet === undefined) return;
  const before = which === "from" ? (corners[0] ?? points.at(-1)) : (corners.at(-1) ?? points[0]);
  const ref = settleEnd(draft, sheet, end, before as Point, idSource(draft));
  const changed = draftWire(draft, id);
  if (ref === null || !changed) return;
  changed[which] = ref;
  const now = pointsOfWire(plain(draft), plain(changed));
  if (now) setPath(changed, withoutIdleCorners(now[0] as Point, corners, now.at(-1) as Point));
  tidyLeft(draft, ownerOf(wire[which]));
}
