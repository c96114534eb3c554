import { CHASSIS_PLACE, chassisPlace, type Terminal } from "../circuit/index.ts";
import {
  type CavityRef,
  type Job,
  ownerOf,
  type Part,
  type Probe,
  pinRef,
  type Reading,
} from "../job/index.ts";
import { isUnplugged } from "./cavity-pins.ts";
import { judgeWith } from "./judge-reading.ts";
import { testLamp } from "./meter.ts";
import type { Shared } from "./shared.ts";

/** What a reading shows to be there. Absence shows nothing. */
export interface Presence {
  readonly cavity: CavityRef;
  /** `feed`: system voltage that holds under load. `return`: a way back that carries current. */
  readonly is: "feed" | "return";
  /** Ω that the way has at most: a load of fewer ohms could be mistaken for it. Infinite: not known. */
  readonly ohmsAtMost: number;
  /** Where the other lead was. */
  readonly other: Probe;
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
  // a stand-in that is fitted may be what feeds it, and plugged in the module itself may
  if (when.standIn !== undefined || !isUnplugged(shared, cavity, when)) return null;
  const { job } = shared;
  const other = red === cavity ? black : red;
  const side = sideOf(shared, other);
  if (side === null) return null;
  if (judgeWith(shared, reading).verdict === "invalid") return null;

  if (quantity === "ohms") {
    return side === "minus" && value <= SOLID_OHMS
      ? { cavity, is: "return", ohmsAtMost: value, other }
      : null;
  }
  const loaded =
    reading.with === "test-lamp"
      ? quantity === "volts" || quantity === "drop"
      : quantity === "drop";
  const volts = red === cavity ? value : -value;
  const full = FULL * job.systemVoltage;
  if (!loaded) return null;
  const isLamp = reading.with === "test-lamp";
  if (side === "minus" && volts >= full) {
    // the load of a drop without a lamp is not said
    const ohmsAtMost = isLamp ? lampWay(job, volts) : Number.POSITIVE_INFINITY;
    return { cavity, is: "feed", ohmsAtMost, other };
  }
  if (side === "plus" && -volts >= full && isLamp) {
    return { cavity, is: "return", ohmsAtMost: lampWay(job, -volts), other };
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

/**
 * Which side of the supply a probe lies on: battery posts and grounds, as the drawing joins them; null
 * for any other place, and where several batteries make it both. On a machine with its plus earthed
 * chassis is plus.
 */
function sideOf(shared: Shared, probe: Probe): "plus" | "minus" | null {
  const { parts } = shared;
  if (probe === "battery+") return "plus";
  if (probe === "battery-") return "minus";
  const isPost = ({ kind }: Part) => kind === "ground" || kind === "battery";
  const part = probe === "chassis" ? frame(shared) : parts.get(ownerOf(probe));
  if (!part || !isPost(part)) return null;
  const { network } = shared;
  const net = network.netOf.get(probe === "chassis" ? pinRef(part.id, "1") : probe);
  const terminals = net === undefined ? [] : (network.nets[net]?.terminals ?? []);
  const has = (sought: Terminal) => terminals.some(({ terminal }) => terminal === sought);
  if (has("battery-plus")) return has("battery-minus") ? null : "plus";
  return has("battery-minus") || has("chassis") ? "minus" : null;
}

const frame = ({ parts, once }: Shared): Part | undefined =>
  once("frame", () => ({
    part: [...parts.values()].find(
      (part) => part.kind === "ground" && chassisPlace(part) === CHASSIS_PLACE,
    ),
  })).part;
