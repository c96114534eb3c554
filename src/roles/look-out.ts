import { sameList } from "../base/index.ts";
import {
  type Arrival,
  type Command,
  type Condition,
  type Cube,
  type Explorer,
  type Flow,
  LIES,
  mostGeneral,
  type NetId,
  OWN_PIN,
  valuesIn,
  without,
} from "../circuit/index.ts";
import {
  type PartOf,
  type PinRef,
  pinRef,
  ROLE_NAMES,
  type RoleName,
  splitRef,
} from "../job/index.ts";
import { loadPaths } from "./loads.ts";
import type { Sighting, Trail } from "./sighting.ts";
import { sightingsThroughLoads } from "./through-loads.ts";

/** Past this many most-general conditions the answer is "could be anything". */
const MOST_PRIMES = 64;

/** Everything that a page end with nothing behind it could turn out to be. */
export const ANYTHING_BUT_UNUSED: readonly RoleName[] = ROLE_NAMES.filter(
  (role) => role !== "unused",
);

/** A condition under which the pin is fed or grounded without a load, and what commands it. */
export interface Rail {
  readonly cube: Cube;
  readonly commands: ReadonlySet<Command>;
  /** The end lies on chassis: of a feed that makes a machine with its plus earthed. */
  readonly onChassis: boolean;
  readonly trail: Trail;
}

/** What a pin sees before the module's other pins are taken into account. */
export interface View {
  readonly pin: PinRef;
  readonly fed: readonly Rail[];
  readonly grounded: readonly Rail[];
  /** Everything else, loads and neighbours; empty where a bus settles the matter. */
  readonly others: readonly Sighting[];
  /** The question could not be answered within bounds. */
  readonly bounded: boolean;
}

const trailTo = (arrival: Arrival): Trail => ({
  legs: [{ step: arrival.step, through: null }],
  end: arrival.end.pin,
});

/** Looks from one pin of a module out into the harness, the module taken out. */
export function lookOut(explorer: Explorer, module: PartOf<"module">, pin: PinRef): View {
  const net = explorer.sight.netOf(pin);
  if (net === undefined) return { pin, fed: [], grounded: [], others: [], bounded: false };
  const inward = explorer.walk(net, "in");
  const outward = explorer.walk(net, "out");
  const fed = railsOf(explorer, pin, inward.arrivals, "source");
  const grounded = railsOf(explorer, pin, outward.arrivals, "ground");
  const bounded = inward.bounded || outward.bounded || fed === null || grounded === null;
  if (!fed || !grounded || bounded)
    return { pin, fed: [], grounded: [], others: [], bounded: true };
  const isBus = fed.some(isPlainlyFed) || grounded.some(isPlainlyGrounded);
  if (isBus) return { pin, fed, grounded, others: [], bounded };
  const others = [
    ...neighbours(explorer, pin, inward.arrivals, outward.arrivals),
    ...sightingsThroughLoads(
      explorer,
      module,
      pin,
      loadPaths(explorer, net, "out", pin),
      loadPaths(explorer, net, "in", pin),
    ),
  ];
  const nothing = fed.length + grounded.length + others.length === 0;
  return {
    pin,
    fed,
    grounded,
    others: nothing ? contactToNowhere(explorer, net) : others,
    bounded,
  };
}

export const isPlainlyFed = (rail: Rail): boolean =>
  [...rail.commands].every((command) => command === "key");

export const isPlainlyGrounded = (rail: Rail): boolean => rail.commands.size === 0;

/** The most general conditions under which the pin is fed (or grounded); null past a bound. */
function railsOf(
  explorer: Explorer,
  pin: PinRef,
  arrivals: readonly Arrival[],
  end: "source" | "ground",
): readonly Rail[] | null {
  const own = explorer.variables.numberOf({ is: "own-pin", pin: splitRef(pin).name });
  const at: { cube: Cube; arrival: Arrival }[] = [];
  for (const arrival of arrivals) {
    if (arrival.end.is !== end) continue;
    // What is live only because the very pin drives it says nothing of the pin.
    if ((valuesIn(arrival.cube, own, explorer.variables.valuesOf) & OWN_PIN.open) === 0) continue;
    at.push({ cube: without(arrival.cube, own), arrival });
  }
  const primes: Condition | null = mostGeneral(
    at.map((one) => one.cube),
    explorer.variables.valuesOf,
    MOST_PRIMES,
  );
  return (
    primes?.flatMap((cube) => {
      const shown = at.find((one) => sameList(one.cube, cube)) ?? at[0];
      if (!shown) return [];
      const { commands, ownPins, hasMemory } = explorer.trace(cube);
      // A relay with a memory that nothing but the very pin could have pulled in proves no feed.
      const other = [...ownPins].some((name) => name !== splitRef(pin).name);
      const isItsOwn = hasMemory && commands.size === 0 && !other;
      const rail: Rail = {
        cube,
        commands: isItsOwn ? new Set(["unknown"]) : commands,
        onChassis: (explorer.sight.lies(shown.arrival.step.net) & LIES.chassis) !== 0,
        trail: trailTo(shown.arrival),
      };
      return [rail];
    }) ?? null
  );
}

/** Other ends that the pin reaches without passing a load. */
function neighbours(
  explorer: Explorer,
  pin: PinRef,
  inward: readonly Arrival[],
  outward: readonly Arrival[],
): readonly Sighting[] {
  const sightings: Sighting[] = [];
  const seen = new Set<string>();
  for (const arrival of [...outward, ...inward]) {
    const { end, cube } = arrival;
    if (end.pin === pin || end.is === "source" || end.is === "ground") continue;
    const switched = explorer.commands(cube).size > 0;
    // One neighbour says as much as a hundred on the same line.
    const isMany = end.is === "own-pin" || end.is === "other-module";
    const stated = end.is === "other-module" ? statedBetween(explorer, pin, end.pin) : [];
    const key = `${isMany ? [end.is, ...stated] : end.pin} ${switched}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const straight = !switched && (end.is === "other-module" || end.is === "own-pin");
    sightings.push({
      of: end.is === "untraced" ? "untraced" : straight ? "neighbour" : "part",
      roles: [...rolesAt(end, switched), ...stated],
      stated,
      side: sideOfSensor(explorer, arrival),
      cube,
      trail: trailTo(arrival),
    });
  }
  return sightings;
}

function sideOfSensor(explorer: Explorer, { end }: Arrival): "high" | "low" | null {
  if (end.is !== "sensor-signal") return null;
  const part = explorer.sight.part(splitRef(end.pin).owner);
  if (part?.kind !== "sensor") return null;
  return part.output === "pnp" ? "high" : part.output === "npn" ? "low" : null;
}

function rolesAt(end: Arrival["end"], switched: boolean): readonly RoleName[] {
  switch (end.is) {
    case "untraced":
      return ANYTHING_BUT_UNUSED;
    case "named":
      return [end.role];
    case "sensor-plus":
      return ["sensor-supply"];
    case "sensor-minus":
      return ["sensor-ground"];
    case "sensor-signal":
      return ["input"];
    case "charge-signal":
      // The charge line excites the alternator and tells whether it charges.
      return ["input", "output"];
    case "other-module":
      return switched
        ? ["input", "output", "signal", "switched-supply", "switched-ground"]
        : ["signal"];
    default:
      // A wire or a contact back to another pin of the same module.
      return switched
        ? ["input", "output", "sensor-supply", "sensor-ground"]
        : ["input", "output", "signal", "sensor-supply", "sensor-ground"];
  }
}

/**
 * What a line to another module may be beside a signal, because one of its ends is stated to feed or
 * to ground a module: some modules are fed by others.
 */
function statedBetween(explorer: Explorer, own: PinRef, far: PinRef): readonly RoleName[] {
  const powers = (ref: PinRef, which: "supply" | "ground") => {
    const { owner, name } = splitRef(ref);
    const part = explorer.sight.part(owner);
    return part?.kind === "module" && (part.power?.[which] ?? []).includes(name);
  };
  return [
    ...(powers(own, "supply") ? (["supply", "switched-supply"] as const) : []),
    ...(powers(own, "ground") ? (["ground", "switched-ground"] as const) : []),
    ...(powers(far, "supply") ? (["output", "sensor-supply"] as const) : []),
    ...(powers(far, "ground") ? (["output", "sensor-ground"] as const) : []),
  ];
}

/** A contact is still a contact where its far side leads nowhere, or where nothing ever closes it. */
function contactToNowhere(explorer: Explorer, net: NetId): readonly Sighting[] {
  for (const flow of ["in", "out"] satisfies Flow[]) {
    for (const step of explorer.walk(net, flow).steps) {
      const contact = explorer.sight.ways(step.net).find(({ element: { law } }) => {
        const isSwitch = law.is === "contact" && law.control !== "isolator";
        return isSwitch || law.is === "relay-contact";
      });
      if (!contact) continue;
      const trail: Trail = { legs: [{ step, through: contact }], end: null };
      return [{ of: "part", roles: ["input"], side: null, cube: step.cube, trail }];
    }
  }
  return [];
}

export const refOf = (module: PartOf<"module">, pin: string): PinRef => pinRef(module.id, pin);
