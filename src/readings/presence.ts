import type { Network } from "../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  isFixedProbe,
  type Job,
  type Probe,
  type Reading,
  type RoleName,
  splitRef,
} from "../job/index.ts";
import { isUnplugged, pinsOfCavity } from "./cavity-pins.ts";
import { feedNets } from "./feed-nets.ts";
import { leastFeedOhms } from "./feed-ohms.ts";
import { judgeWith } from "./judge-reading.ts";
import { testLamp } from "./meter.ts";
import { type Shared, sharedFor } from "./shared.ts";

/** What a reading shows to be there. Absence shows nothing. */
export interface Presence {
  readonly cavity: CavityRef;
  /** `feed`: system voltage that holds under load. `return`: a way back that carries current. */
  readonly is: "feed" | "return";
  /** Ω that the way has at most, so that a load of fewer ohms could be mistaken for it. */
  readonly ohmsAtMost: number;
}

/** Share of system voltage that counts as full under load. */
const FULL = 0.85;
/** A battery charges up to this share of nominal. */
const MOST_FULL = 1.2;
/** Above this a return is not solid, Ω. */
const SOLID_OHMS = 2;

/** What a reading proves to be present at the harness of a cavity; null when it proves nothing. */
export function presenceIn(shared: Shared, reading: Reading, cavity: CavityRef): Presence | null {
  const { value, quantity, red, black, when } = reading;
  if (value === "OL" || (red !== cavity && black !== cavity)) return null;
  if (!isUnplugged(shared, cavity, when)) return null;
  const { job } = shared;
  const other = sideOf(shared, red === cavity ? black : red);
  if (other === null) return null;
  if (judgeWith(shared, reading).verdict === "invalid") return null;

  if (quantity === "ohms") {
    return other === "minus" && value <= SOLID_OHMS
      ? { cavity, is: "return", ohmsAtMost: value }
      : null;
  }
  const loaded =
    reading.with === "test-lamp"
      ? quantity === "volts" || quantity === "drop"
      : quantity === "drop";
  const volts = red === cavity ? value : -value;
  const full = FULL * job.systemVoltage;
  if (!loaded) return null;
  if (other === "minus" && volts >= full)
    return { cavity, is: "feed", ohmsAtMost: lampWay(job, volts) };
  if (other === "plus" && -volts >= full && reading.with === "test-lamp") {
    return { cavity, is: "return", ohmsAtMost: lampWay(job, -volts) };
  }
  return null;
}

/** Ω in series with a test lamp that still leave it these volts, at most. */
function lampWay(job: Job, volts: number): number {
  const lamp = testLamp(job.systemVoltage);
  if (lamp.is !== "filament") return Number.POSITIVE_INFINITY;
  const source = Math.max(volts, MOST_FULL * job.systemVoltage);
  return (source / volts - 1) * lamp.hot * lamp.spread[1];
}

/** Which side of the supply a probe lies on by what it is; null where that takes a circuit to say. */
function sideOf({ parts }: Shared, probe: Probe): "plus" | "minus" | null {
  if (isFixedProbe(probe)) return probe === "battery+" ? "plus" : "minus";
  const { owner, name } = splitRef(probe);
  const part = parts.get(owner);
  if (part?.kind === "ground") return "minus";
  if (part?.kind === "battery") return name === "+" ? "plus" : "minus";
  return null;
}

/**
 * Whether a reading shows something at a cavity that the printed role forbids: volts that hold under
 * load where it says ground, a solid return where it says supply. One sentence, or null. A fault can
 * look like either, so it stays silent where the circuit as drawn agrees with the word and a load
 * could bring the reading about.
 */
export function presenceContradicts(
  job: Job,
  machine: Id,
  reading: Reading,
  printedRole: RoleName,
  cavity: CavityRef = cavityProbe(job, reading),
): string | null {
  const shared = sharedFor(job, machine);
  const presence = presenceIn(shared, reading, cavity);
  if (!presence) return null;
  const way = drawnWay(job, shared.network, cavity);
  if (presence.is === "feed" && printedRole === "ground") {
    // an open ground lets every load that shares it pull the wire up to full voltage
    if (way.isGround && way.hasCompany) return null;
    return `System voltage that holds under load stands at ${cavity}, where the diagram says ground.`;
  }
  if (
    presence.is === "return" &&
    (printedRole === "supply" || printedRole === "switched-supply") &&
    // a chafed feed behind its blown fuse reads as a solid return
    !way.isFeed &&
    // and a dead bus returns current through everything that hangs on it
    (way.isGround || leastFeedOhms(shared, reading.when) > 2 * presence.ohmsAtMost + SOLID_OHMS)
  ) {
    return `A solid return stands at ${cavity}, where the diagram says supply.`;
  }
  return null;
}

function cavityProbe(job: Job, { red, black }: Reading): CavityRef {
  const isCavity = (probe: Probe) => job.plugs.some((plug) => plug.id === splitRef(probe).owner);
  return isCavity(red) || !isCavity(black) ? red : black;
}

interface DrawnWay {
  /** Wires alone lead to chassis or battery minus. */
  readonly isGround: boolean;
  /** Nothing but protection and contacts lies between it and battery plus. */
  readonly isFeed: boolean;
  /** Something else hangs on the same wires and could feed it, or leave them. */
  readonly hasCompany: boolean;
}

/** What the drawing has at the cavity, wires only. */
function drawnWay(job: Job, network: Network, cavity: CavityRef): DrawnWay {
  const pins = pinsOfCavity(job, cavity);
  const nets = pins.flatMap((pin) => {
    const net = network.netOf.get(pin);
    return net === undefined ? [] : [net];
  });
  const terminals = nets.flatMap((net) => network.nets[net]?.terminals ?? []);
  const isGround = terminals.some(
    ({ terminal }) => terminal === "chassis" || terminal === "battery-minus",
  );
  const local = wiredTo(network, pins);
  const hasCompany = [...local].some((pin) => {
    const { owner } = splitRef(pin);
    if (pins.includes(pin)) return false;
    const kind = network.parts.get(owner)?.kind;
    return kind !== "splice" && kind !== "inline" && kind !== "ground" && kind !== "battery";
  });
  const isFeed = nets.some((net) => feedNets(network).has(net));
  return { isGround, isFeed, hasCompany };
}

/** Pins that drawn wires join to these: neither chassis nor page ends are crossed. */
function wiredTo(network: Network, pins: readonly string[]): ReadonlySet<string> {
  const seen = new Set(pins);
  const stack = [...pins];
  for (let pin = stack.pop(); pin !== undefined; pin = stack.pop()) {
    for (const hop of network.hops.get(pin) ?? []) {
      if (hop.wire === null || seen.has(hop.to)) continue;
      seen.add(hop.to);
      stack.push(hop.to);
    }
  }
  return seen;
}
