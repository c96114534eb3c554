import {
  type Between,
  type Branch,
  between,
  decide,
  type Fault,
  FUSE_TIMES,
  held,
  heldBetween,
  type OperatingPoint,
  setUp,
  transfer,
} from "../../circuit/index.ts";
import type { Id } from "../../job/index.ts";
import { AMMETER, MOST_OHMS, SHUNT_OHMS, testLamp, VOLTMETER } from "../meter.ts";
import type { ReadingSetup } from "../prediction.ts";
import { isPrediction, type Placed, place } from "../probes.ts";
import type { Healthy, Shared } from "../shared.ts";

/** What a fault does to a state of the machine. */
export interface Harm {
  /** Conducts no more. */
  readonly opens: readonly Branch[];
  /** Conducts now. */
  readonly adds: readonly Branch[];
  /** Deciders that stay as they are told, by id. */
  readonly holds?: ReadonlyMap<string, boolean>;
  /** A joint that parts: the machine is put together anew with it, which takes its time. */
  readonly parts?: Fault;
}

const NO_HARM: Harm = { opens: [], adds: [] };

/** What the meter shows of a harmed machine. */
export interface Shown {
  /** Unit of the reading; null where nothing ties the two probes together. */
  readonly value: number | "OL" | null;
  /** Fuses that blew before it was read. */
  readonly blown: readonly Id[];
  readonly states: ReadonlyMap<string, boolean>;
  readonly point: OperatingPoint;
}

/** Rounds in which relays and modules follow what befell the machine, at most. */
const ROUNDS = 8;
/** Fuses that one fault blows, at most. */
const MOST_BLOWN = 3;

/** A state of a machine with the meter in its place, in which one fault after the other is tried. */
export interface FaultTrial {
  readonly healthy: Healthy;
  readonly placed: Placed;
  /** The healthy machine. */
  readonly sound: Shown;
  /** Volts that each node moves by per ampere pushed in at red and out at black, meter in place; null where they don't hang together. */
  readonly seen: Float64Array | null;
  /** The meter's own branches. */
  readonly meter: readonly Branch[];
  with(harm: Harm): Shown;
}

/** Null where the probes have no place, or a state can't be. */
export function faultTrial(shared: Shared, setup: ReadingSetup): FaultTrial | null {
  const { quantity, red, black, when } = setup;
  const isOhms = quantity === "ohms";
  const acts =
    quantity === "amps"
      ? AMMETER
      : setup.with === "test-lamp"
        ? testLamp(shared.job.systemVoltage)
        : VOLTMETER;
  const instrument: readonly Between[] = isOhms ? [] : [{ red, black, acts }];
  // the voltmeter alone moves no relay
  const bench = shared.bench(when, acts === VOLTMETER ? [] : instrument);
  const healthy = shared.healthy(when, bench);
  const placed = place(healthy, setup);
  if (isPrediction(placed)) return null;
  const { wiring } = healthy;
  const meter = heldBetween(wiring, instrument);

  const pointOf = (
    harm: Harm,
    extra: readonly Branch[],
    states: Shown["states"],
    blown: ReadonlySet<Branch>,
  ) => {
    const opens = new Set([...harm.opens, ...blown]);
    return held(wiring, states, extra, null, isOhms, opens.size === 0 ? null : opens);
  };
  const settle = (harm: Harm, extra: readonly Branch[], blown: ReadonlySet<Branch>) => {
    let states: Shown["states"] = new Map([...healthy.states, ...(harm.holds ?? [])]);
    let point = pointOf(harm, extra, states, blown);
    for (let round = 0; round < ROUNDS && !isOhms; round++) {
      const next = new Map(states);
      let isMoved = false;
      for (const decider of wiring.deciders) {
        if (harm.holds?.has(decider.id)) continue;
        const acts = decide(decider, point, states, wiring.systemVoltage);
        if (acts === (states.get(decider.id) ?? false)) continue;
        next.set(decider.id, acts);
        isMoved = true;
      }
      if (!isMoved) break;
      states = next;
      point = pointOf(harm, extra, states, blown);
    }
    return { states, point };
  };
  const shows = (point: OperatingPoint, { red, black }: Placed): Shown["value"] => {
    if (isOhms) {
      const volts = transfer(point, red, black);
      const ohms = volts
        ? (volts[red] as number) - (volts[black] as number)
        : Number.POSITIVE_INFINITY;
      return ohms > MOST_OHMS ? "OL" : ohms;
    }
    const volts = between(point, red, black);
    if (volts === null) return null;
    return quantity === "amps" ? volts / SHUNT_OHMS : volts;
  };
  const parted = (fault: Fault): Shown => {
    const own = setUp(shared.job, shared.machine, when, instrument, "real", [fault]);
    const { point, states } = own.settled;
    const at = place(own, setup);
    const none = { value: null, blown: [], states, point };
    if (isPrediction(at)) return none;
    const dead = isOhms ? held(own.wiring, states, [], null, true) : point;
    return { ...none, value: shows(dead, at) };
  };
  const shown = (harm: Harm): Shown => {
    if (harm.parts) return parted(harm.parts);
    const blown = new Set<Branch>();
    // one list for all that is tried with it: a net is made ready once for each list
    const extra = harm.adds.length === 0 ? meter : [...meter, ...harm.adds];
    let found = settle(harm, extra, blown);
    while (!isOhms && blown.size < MOST_BLOWN) {
      const next = overloaded(wiring.branches, found.point, blown);
      if (!next) break;
      blown.add(next);
      found = settle(harm, extra, blown);
    }
    return {
      ...found,
      value: shows(found.point, placed),
      blown: [...blown].flatMap(({ owner }) => owner ?? []),
    };
  };
  const sound = shown(NO_HARM);
  return {
    healthy,
    placed,
    sound,
    meter,
    seen: transfer(sound.point, placed.red, placed.black),
    with: shown,
  };
}

/** The fuse that carries most beyond its rating. */
function overloaded(
  branches: readonly Branch[],
  { amps }: OperatingPoint,
  blown: ReadonlySet<Branch>,
): Branch | null {
  let worst: Branch | null = null;
  let most = FUSE_TIMES;
  branches.forEach((branch, index) => {
    const law = branch.element?.law;
    if (law?.is !== "protection" || blown.has(branch)) return;
    const times = Math.abs(amps[index] as number) / law.amps;
    if (times <= most) return;
    worst = branch;
    most = times;
  });
  return worst;
}
