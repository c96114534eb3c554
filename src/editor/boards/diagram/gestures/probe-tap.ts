import { distance, type Point } from "../../../../base/index.ts";
import { terminalOf } from "../../../../circuit/index.ts";
import { type Job, type PinRef, type Probe, splitRef } from "../../../../job/index.ts";
import {
  type DiagramHit,
  drawnOf,
  placeProbe,
  type Scene,
  type Session,
} from "../../../../session/index.ts";

/** What a probe held to a pin is called: the frame and a lone battery's posts have names of their own. */
export function probeAt(job: Job, ref: PinRef): Probe {
  const { owner, name } = splitRef(ref);
  const part = job.diagram.parts.find((one) => one.id === owner);
  if (!part) return ref;
  const place = part.place?.trim().toLowerCase() ?? "";
  const terminal = terminalOf(part, name);
  if (terminal === "chassis" && ["", "frame", "chassis"].includes(place)) return "chassis";
  const batteries = job.diagram.parts.filter((one) => one.kind === "battery").length;
  if (batteries === 1 && terminal === "battery-plus") return "battery+";
  if (batteries === 1 && terminal === "battery-minus") return "battery-";
  return ref;
}

/** The pin that a tap on a part or a wire is nearest to. */
export function nearestPin(scene: Scene, hit: DiagramHit, at: Point): PinRef | null {
  if (hit.on === "pin") return hit.ref;
  const wire = hit.on === "wire" ? scene.wireById.get(hit.wire)?.wire : undefined;
  const spots = wire
    ? [scene.pins.get(wire.from), scene.pins.get(wire.to)]
    : hit.on === "part"
      ? (scene.partById.get(hit.part)?.pins ?? [])
      : [];
  let best: PinRef | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const spot of spots) {
    if (!spot || distance(spot.at, at) >= nearest) continue;
    nearest = distance(spot.at, at);
    best = spot.ref;
  }
  return best;
}

/** Fills the probe that the reading pad asks for. Returns whether it asked and found something. */
export function tapProbe(
  session: Session,
  scene: Scene,
  hit: DiagramHit | null,
  at: Point,
): boolean {
  const { draft } = session.get();
  if (!draft?.asks || !hit) return false;
  const ref = nearestPin(scene, hit, at);
  if (!ref) return false;
  session.show({ draft: placeProbe(draft, probeAt(drawnOf(session.get()), ref)) });
  return true;
}
