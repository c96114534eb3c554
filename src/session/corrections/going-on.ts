import { add, type Point, scale, subtract } from "../../base/index.ts";
import { type Job, ownerOf, type Part, type PinRef } from "../../job/index.ts";
import { plain } from "../diagram/draft.ts";
import { layWire } from "../diagram/lay-wire.ts";
import { shapeOf, unitOf } from "../diagram/part-shape.ts";
import { RUN_OUT } from "../diagram/routed-wire.ts";
import { pointsOfWire } from "../diagram/split-wire.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

/** A short wire out of each pin to a page end without a partner: what lies beyond is untraced. */
export const markAsGoingOn: CorrectionEdit<CorrectionOf<"mark-as-going-on">> = {
  label: ({ pins }) => `Mark as going on, not traced (${pins.join(", ")})`,
  change: (draft, { pins }) => {
    for (const pin of pins) goOnFrom(draft, pin);
  },
};

function goOnFrom(draft: Job, pin: PinRef): void {
  const job = plain(draft);
  const part = job.diagram.parts.find(({ id }) => id === ownerOf(pin));
  const spot = part && shapeOf(part).pins.find(({ ref }) => ref === pin);
  if (!part || !spot) return;
  const way = spot.out ?? onwards(job, pin, spot.at);
  const at = add(spot.at, scale(way, RUN_OUT * unitOf(part)));
  const from = { on: "pin", ref: pin } as const;
  layWire(draft, { sheet: sheetOf(part), from, to: { on: "open", at }, corners: [] });
}

const sheetOf = ({ sheet }: Part) => sheet;

/** On along the wire that comes to a pin from which any way is as good; to the right without one. */
function onwards(job: Job, pin: PinRef, at: Point): Point {
  const wire = job.diagram.wires.find(({ from, to }) => from === pin || to === pin);
  const points = wire && pointsOfWire(job, wire);
  const before = points && (wire.from === pin ? points[1] : points.at(-2));
  const [dx, dy] = before ? subtract(at, before) : [1, 0];
  if (Math.abs(dx) >= Math.abs(dy)) return [dx < 0 ? -1 : 1, 0];
  return [0, dy < 0 ? -1 : 1];
}
