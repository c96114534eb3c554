import type { Point } from "../../base/index.ts";
import { type Id, type Job, type PinRef, pinRef, splitRef, type Wire } from "../../job/index.ts";
import { draftWire, idSource, plain } from "./draft.ts";
import { addPart } from "./new-part.ts";
import { shapeOf } from "./part-shape.ts";
import { lengthOf, nearestOnLine, samePoint } from "./polyline.ts";

/** From one end through the corners to the other; null when an end has no part. */
export function pointsOfWire(job: Job, wire: Wire): Point[] | null {
  const ends = [wire.from, wire.to].map((ref) => {
    const part = job.diagram.parts.find((one) => one.id === splitRef(ref).owner);
    return part ? (shapeOf(part).pins.find((spot) => spot.ref === ref)?.at ?? part.at) : null;
  });
  const [from, to] = ends;
  return from && to ? [from, ...(wire.path ?? []), to] : null;
}

const asPath = (points: readonly Point[]): [number, number][] | undefined =>
  points.length === 0 ? undefined : points.map(([x, y]): [number, number] => [x, y]);

/** Sets or clears the corners of a wire in a draft. */
export function setPath(wire: Wire, corners: readonly Point[]): void {
  const path = asPath(corners);
  if (path) wire.path = path;
  else delete wire.path;
}

/**
 * Splits a wire at the spot nearest to `at` by a splice there. The first half keeps the id; number,
 * colour and size go to both halves, the length by their share. Returns the splice's pin; null when
 * there is no such wire.
 */
export function splitWire(draft: Job, id: Id, at: Point, nextId = idSource(draft)): PinRef | null {
  const job = plain(draft);
  const before = job.diagram.wires.find((wire) => wire.id === id);
  const points = before && pointsOfWire(job, before);
  const spot = points && nearestOnLine(points, at);
  const first = draftWire(draft, id);
  if (!before || !points || !spot || !first) return null;
  const sheet = job.diagram.parts.find((one) => one.id === splitRef(before.from).owner)?.sheet;
  if (sheet === undefined) return null;

  const splice = pinRef(addPart(draft, "splice", sheet, spot.at, 0, nextId), "1");
  const head = points.slice(1, spot.segment + 1).filter((corner) => !samePoint(corner, spot.at));
  const tail = points.slice(spot.segment + 1, -1).filter((corner) => !samePoint(corner, spot.at));
  const second: Wire = { ...structuredClone(before), id: nextId("W"), from: splice };
  first.to = splice;
  setPath(first, head);
  setPath(second, tail);
  if (before.metres !== undefined) {
    const whole = lengthOf(points);
    const share = whole === 0 ? 0.5 : lengthOf([points[0] as Point, ...head, spot.at]) / whole;
    if (share > 0 && share < 1) {
      first.metres = before.metres * share;
      second.metres = before.metres * (1 - share);
    }
  }
  draft.diagram.wires.push(second);
  return splice;
}
