import { boxAt, type Point } from "../../../../base/index.ts";
import type { Part, PartOf, Probe } from "../../../../job/index.ts";
import {
  type DiagramHit,
  drawnOf,
  hitAt,
  type PartShape,
  partAt,
  partsIn,
} from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Press } from "../gestures/gesture.ts";
import { nearestPin, probeAt } from "../gestures/probe-tap.ts";

/** Half of the least that a finger can be asked to hit, pixels of the view. */
const HALF_FINGER = 24;

type SwitchPart = PartOf<"switch">;
const isSwitch = (part: Part): part is SwitchPart => part.kind === "switch";

/** The switch under a press: its symbol, or as much round its middle as a fingertip needs. */
export function switchAt(board: Board, { sheet: [x, y], touch }: Press): SwitchPart | null {
  const scene = board.scene();
  if (!scene) return null;
  const half = touch ? HALF_FINGER / board.camera().zoom : 0;
  let best: SwitchPart | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const shape of partsIn(scene, boxAt([x, y], half))) {
    if (!isSwitch(shape.part)) continue;
    const away = distanceTo(shape, [x, y]);
    if (away >= nearest) continue;
    nearest = away;
    best = shape.part;
  }
  return best;
}

const distanceTo = ({ box }: PartShape, [x, y]: Point): number =>
  Math.hypot(x - (box.left + box.right) / 2, y - (box.top + box.bottom) / 2);

export function hitWhileOperating(board: Board, press: Press): DiagramHit | null {
  const found = switchAt(board, press);
  if (found) return { on: "part", part: found.id };
  const scene = board.scene();
  // A fuse seen from far is as small as its pins: on the symbol itself it is the part that is meant.
  const under = scene && partAt(scene, press.sheet, 0);
  if (under && under.pins.length > 1 && under.part.kind !== "module") {
    return { on: "part", part: under.part.id };
  }
  return scene && hitAt(scene, press.sheet, board.reach(press.touch));
}

/** Where a lead held there touches; null where there is nothing to touch. */
export function probeUnder(board: Board, press: Press): Probe | null {
  const scene = board.scene();
  const hit = scene && hitAt(scene, press.sheet, board.reach(press.touch));
  if (!scene || !hit) return null;
  const pin = nearestPin(scene, hit, press.sheet);
  return pin === null ? null : probeAt(drawnOf(board.session.get()), pin);
}

/** What is chosen by touching something: a pin, a part, a wire. */
export const chosenBy = (hit: DiagramHit): string =>
  hit.on === "pin" ? hit.ref : hit.on === "part" ? hit.part : hit.wire;
