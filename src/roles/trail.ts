import { type Network, nearestInNet, type Step, wayInsideNet } from "../circuit/index.ts";
import { type Id, ownerOf, type PinRef, splitRef } from "../job/index.ts";
import type { Leg, Trail } from "./sighting.ts";

/** Ids of wires and parts along a trail, from the pin outward; each id once in a row. */
export function trailIds(network: Network, from: PinRef, trail: Trail): readonly Id[] {
  const ids: Id[] = [];
  const push = (id: Id) => {
    if (ids.at(-1) !== id) ids.push(id);
  };
  let at = from;
  const walkTo = (pin: PinRef) => {
    for (const id of wayInsideNet(network, at, pin)) push(id);
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
      const landed = network.netOf.get(step.via.to) === step.net ? step.via.to : null;
      cross(landed ?? otherSide(network, step) ?? step.via.to, step.via.from);
    }
    if (leg.through) cross(leg.through.to, leg.through.from);
  }
  if (trail.end !== null) {
    const end = nearestLike(network, at, trail.end);
    walkTo(end);
    push(ownerOf(end));
  }
  return ids;
}

/** Ground is ground and battery plus is battery plus: of several in one net, the one nearest by. */
function nearestLike(network: Network, at: PinRef, end: PinRef): PinRef {
  const wanted = busOf(network, end);
  if (!wanted) return end;
  return nearestInNet(network, at, (pin) => busOf(network, pin) === wanted) ?? end;
}

function busOf(network: Network, pin: PinRef): "source" | "ground" | null {
  const { owner, name } = splitRef(pin);
  const kind = network.parts.get(owner)?.kind;
  if (kind === "ground") return "ground";
  return kind === "battery" ? (name === "+" ? "source" : "ground") : null;
}

function stepsOf(leg: Leg): readonly Step[] {
  const steps: Step[] = [];
  for (let step: Step | null = leg.step; step; step = step.before) steps.push(step);
  return steps.reverse();
}

function otherSide(network: Network, step: Step): PinRef | null {
  const part = step.via?.element.part;
  return network.nets[step.net]?.pins.find((pin) => ownerOf(pin) === part) ?? null;
}
