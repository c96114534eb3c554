import type { Sight, Step } from "../circuit/index.ts";
import { type Id, ownerOf, type Part, type PinRef, splitRef } from "../job/index.ts";
import type { Leg, Trail } from "./sighting.ts";

/** Ids of wires and parts along a trail, from the pin outward; each id once in a row. */
export function trailIds(sight: Sight, from: PinRef, trail: Trail): readonly Id[] {
  const ids: Id[] = [];
  const push = (id: Id) => {
    if (ids.at(-1) !== id) ids.push(id);
  };
  let at = from;
  const walkTo = (pin: PinRef) => {
    for (const id of sight.wayInsideNet(at, pin)) push(id);
    at = pin;
  };
  const cross = (to: PinRef, entry: PinRef) => {
    walkTo(entry);
    push(ownerOf(entry));
    at = to;
  };
  for (const leg of trail.legs) {
    for (const step of stepsOf(leg)) {
      if (!step.via) continue;
      // A converter is entered at one pair of pins and left at the other.
      const landed = sight.netOf(step.via.to) === step.net ? step.via.to : null;
      cross(landed ?? otherSide(sight, step) ?? step.via.to, step.via.from);
    }
    if (leg.through) cross(leg.through.to, leg.through.from);
  }
  if (trail.end !== null) {
    const end = nearestLike(sight, at, trail.end, ownerOf(from));
    walkTo(end);
    push(ownerOf(end));
  }
  return ids;
}

/**
 * Ground is ground, battery plus is battery plus and one other module says as much as the next: of
 * several in one net, the one nearest by.
 */
function nearestLike(sight: Sight, at: PinRef, end: PinRef, from: Id): PinRef {
  const last = sight.part(ownerOf(end));
  const bus = busOf(last, end);
  const isOther = (part: Part | undefined) => part?.kind === "module" && part.id !== from;
  if (bus) return sight.nearestInNet(at, (part, pin) => busOf(part, pin) === bus) ?? end;
  return isOther(last) ? (sight.nearestInNet(at, isOther) ?? end) : end;
}

function busOf(part: Part | undefined, pin: PinRef): "source" | "ground" | null {
  if (part?.kind === "ground") return "ground";
  if (part?.kind !== "battery") return null;
  return splitRef(pin).name === "+" ? "source" : "ground";
}

function stepsOf(leg: Leg): readonly Step[] {
  const steps: Step[] = [];
  for (let step: Step | null = leg.step; step; step = step.before) steps.push(step);
  return steps.reverse();
}

const otherSide = (sight: Sight, step: Step): PinRef | null =>
  step.via ? sight.pinInNet(step.via.element.part, step.net) : null;
