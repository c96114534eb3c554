import type { Explorer } from "../circuit/index.ts";
import { type PartOf, type PinRef, type RoleName, splitRef } from "../job/index.ts";
import type { LoadPath, Passage } from "./loads.ts";
import type { Sighting } from "./sighting.ts";

type Side = "high" | "low" | null;

/** What a pin may be, judged by the parts that it sees through. */
export function sightingsThroughLoads(
  explorer: Explorer,
  module: PartOf<"module">,
  pin: PinRef,
  outward: readonly LoadPath[],
  inward: readonly LoadPath[],
): readonly Sighting[] {
  const paths = [...outward, ...inward];
  const arrived = new Set(
    paths.filter((path) => path.end !== null).map((path) => path.first.element.part),
  );
  const sightings: Sighting[] = [];
  const nowhere = new Set<string>();
  for (const path of paths) {
    const part = path.first.element.part;
    if (path.end === null) {
      if (arrived.has(part) || nowhere.has(part)) continue;
      nowhere.add(part);
    }
    const roles = rolesThrough(explorer, module, pin, path);
    if (roles.length === 0) continue;
    sightings.push({
      of: "part",
      roles,
      side: sideOf(path),
      cube: path.cube,
      trail: { legs: path.legs, end: path.endPin },
    });
  }
  return sightings;
}

/** A load to ground is fed by the pin; a sender to ground pulls it low. A resistor may be either. */
function sideOf({ end, passages }: LoadPath): Side {
  if (end?.is !== "ground" && end?.is !== "source") return null;
  const high = end.is === "ground";
  if (passages.every((one) => one === "load")) return high ? "high" : "low";
  if (passages.every((one) => one === "sender")) return high ? "low" : "high";
  return null;
}

function rolesThrough(
  explorer: Explorer,
  module: PartOf<"module">,
  pin: PinRef,
  path: LoadPath,
): readonly RoleName[] {
  const roles = new Set<RoleName>();
  const add = (...more: readonly RoleName[]) => {
    for (const role of more) roles.add(role);
  };
  const passages = new Set<Passage>(path.passages);
  const atRail = path.end?.is === "source" || path.end?.is === "ground";
  if (passages.has("load")) add("output");
  if (passages.has("resistor")) {
    // A load, a pull resistor, a coding part or a line's terminator: topology can't tell.
    add("input", "output");
    if (!atRail) add("signal");
    // A dropping resistor in a feed: what it feeds is fed, if weakly.
    if (path.end?.is === "source" && passages.size === 1)
      add(explorer.commands(path.cube).size === 0 ? "supply" : "switched-supply");
  }
  if (passages.has("sender")) add(...senderRoles(module, pin, path));
  if (passages.has("track") || passages.has("wiper"))
    add(...potentiometerRoles(explorer, module, pin, path));
  return [...roles];
}

/** A two-wire sender: read against a bus, or between two pins of which either may be the reference. */
function senderRoles(
  module: PartOf<"module">,
  pin: PinRef,
  { end }: LoadPath,
): readonly RoleName[] {
  if (end === null || end.is === "source" || end.is === "ground") return ["input"];
  if (end.is === "own-pin") {
    const end1 = sourceEnd(module, pin, end.pin);
    if (end1) return ["input", end1];
  }
  return ["input", "sensor-supply", "sensor-ground"];
}

/** Which end of a stated source of the module a pin is, seen against another pin; null: not stated. */
function sourceEnd(
  module: PartOf<"module">,
  pin: PinRef,
  other: PinRef,
): "sensor-supply" | "sensor-ground" | null {
  const mine = splitRef(pin).name;
  const theirs = splitRef(other).name;
  for (const source of module.sources ?? []) {
    const [plus, minus] =
      source.volts >= 0 ? source.between : [source.between[1], source.between[0]];
    if (plus === mine && minus === theirs) return "sensor-supply";
    if (plus === theirs && minus === mine) return "sensor-ground";
  }
  return null;
}

function potentiometerRoles(
  explorer: Explorer,
  module: PartOf<"module">,
  pin: PinRef,
  path: LoadPath,
): readonly RoleName[] {
  const { part } = path.first.element;
  const { sight } = explorer;
  const connected = (name: string) => sight.isWired(`${part}:${name}`);
  const near = splitRef(path.first.from).name;
  if (near === "W") return ["input"];
  const otherEnd = near === "1" ? "2" : "1";
  // Wired as a variable resistor (one end left free or tied to the wiper): a sender.
  const rheostat =
    !connected("W") ||
    !connected(otherEnd) ||
    sight.netOf(`${part}:W`) === sight.netOf(`${part}:${otherEnd}`) ||
    sight.netOf(`${part}:W`) === sight.netOf(`${part}:${near}`);
  if (rheostat) return senderRoles(module, pin, path);
  // Across the whole track only: through the wiper to another pin says nothing of an end.
  if (splitRef(path.first.to).name !== otherEnd) return [];
  const { end } = path;
  if (end?.is === "ground") return ["sensor-supply"];
  if (end?.is === "source") return ["sensor-ground"];
  const stated = end?.is === "own-pin" ? sourceEnd(module, pin, end.pin) : null;
  return stated ? [stated] : ["sensor-supply", "sensor-ground"];
}
