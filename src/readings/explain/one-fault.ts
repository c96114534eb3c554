import { addTo } from "../../base/index.ts";
import { type Branch, circuitOf, SHORT_OHMS } from "../../circuit/index.ts";
import type { Id, Job, PinRef, Reading, Wire } from "../../job/index.ts";
import { takenAt } from "../judge-reading.ts";
import { GHOST_SHARE, METER_ERROR, SHUNT_OHMS, UNRELATED_OHMS } from "../meter.ts";
import { predictWith } from "../predict.ts";
import type { Prediction } from "../prediction.ts";
import { sharedFor } from "../shared.ts";
import { netsByWire } from "../wire-nets.ts";
import { reachOfFaults } from "./fault-reach.ts";
import { feelsOf, type Need } from "./feels.ts";
import { type JointHarm, jointHarm } from "./joint-harm.ts";
import { type Screened, screenOf } from "./screen.ts";
import { branchName, type SingleFault, singleFaults } from "./single-faults.ts";
import { type FaultTrial, faultTrial, type Harm, type Shown } from "./trial-fault.ts";

/** `one`: some single fault may give all the readings. `untold`: too much to try, or something unknown. */
export type OneFault = "one" | "none" | "untold";

/** Faults tried that may matter to every one of the readings, at most: any more and nobody waits for it. */
const MOST_TRIED = 2000;
/** Ohms that a fault is tried with between nothing and all: a relay may drop out at any of them. */
const SOME_OHMS = [0.3, 3, 30, 300, 3000] as const;
/** Share of a value within which a faulty machine may show it (our own, cautious). */
const SLACK = 0.1;
/** Ω of the wires to where two lines touch (our own, cautious). */
const WIRES_OHMS = 1;
/** Ω of leads, contacts and wires beside what a fault leaves. */
const JOINTS_OHMS = 2;

/**
 * Whether one fault, whatever its ohms, may give all these readings of one machine together: each
 * fault is put to the state of each reading, the fuses that it blows blown in all of them. A reading
 * that something unknown may have given proves nothing and is left out.
 */
export function oneFaultGives(job: Job, machine: Id, readings: readonly Reading[]): OneFault {
  const shareds = new Set(readings.map((one) => sharedFor(job, machine, takenAt(one))));
  const [shared, second] = shareds;
  const found = () => ({ is: tryEach(job, machine, readings, screenOf) });
  if (!shared || second) return found().is;
  const key = readings.map(({ id: _, at: __, note: ___, ...own }) => own);
  return shared.once(`one fault ${JSON.stringify(key)}`, found).is;
}

/** The same, with what tells which faults need trying at all. */
export function tryEach(
  job: Job,
  machine: Id,
  readings: readonly Reading[],
  makeScreen: typeof screenOf,
): OneFault {
  const { parts, wires } = circuitOf(job, machine);
  const wiresAt = new Map<PinRef, Wire[]>();
  for (const wire of wires) for (const end of [wire.from, wire.to]) addTo(wiresAt, end, wire);
  const tried = readings.flatMap((reading) => tryOut(job, machine, reading, wiresAt) ?? []);
  const [first, ...rest] = tried.sort((a, b) => Number(b.isPresence) - Number(a.isPresence));
  if (!first) return "untold";
  if (tried.every(({ isFree }) => isFree)) return "one";
  const byId = new Map(parts.map((part) => [part.id, part]));
  const probes = tried.flatMap(({ reading }) => [reading.red, reading.black]);
  const screen = makeScreen(tried);
  if (screen === null) return "untold";
  const faults = singleFaults(job, byId, wires, first.trial, probes, screen, MOST_TRIED);
  if (faults === null) return "untold";
  const gives = (fault: SingleFault) =>
    first.fits(fault, null) &&
    (rest.every((one) => one.fits(fault, null)) || withFusesBlown(fault, tried));
  return faults.some(gives) ? "one" : "none";
}

/** Fuses that a touching line blows in any of the states stay blown in all of them. */
function withFusesBlown(fault: SingleFault, tried: readonly Tried[]): boolean {
  const blown = new Set(tried.flatMap((one) => one.blows(fault)));
  return blown.size > 0 && tried.every((one) => one.fits(fault, blown));
}

interface Tried extends Screened {
  readonly reading: Reading;
  /** More than a healthy machine shows. */
  readonly isPresence: boolean;
  /** It lies so near to what a good machine shows that a fault which does nothing gives it. */
  readonly isFree: boolean;
  fits(fault: SingleFault, blown: ReadonlySet<Id> | null): boolean;
  blows(fault: SingleFault): readonly Id[];
}

/** Null where something unknown may have given the reading. */
function tryOut(
  job: Job,
  machine: Id,
  reading: Reading,
  wiresAt: ReadonlyMap<PinRef, readonly Wire[]>,
): Tried | null {
  const shared = sharedFor(job, machine, takenAt(reading));
  const { value, quantity } = reading;
  const reach = value === "OL" ? null : reachOfFaults(shared, reading, value);
  if (reach !== null && reach.untold !== null) return null;
  const prediction = predictWith(shared, reading);
  const trial = faultTrial(shared, reading);
  if (trial === null) return null;
  const { low, high } = prediction;
  const spread: Spread = {
    systemVoltage: job.systemVoltage,
    own: low === null || high === null ? 0 : (high - low) / 2,
  };
  const { wiring } = trial.healthy;
  const nets = netsByWire(wiring);
  const named = new Map<string, Branch[]>();
  for (const branch of wiring.branches) {
    const name = branchName(branch);
    named.set(name, [...(named.get(name) ?? []), branch]);
  }
  const fuses = (ids: ReadonlySet<Id>) =>
    wiring.branches.filter(
      ({ owner, element }) => owner !== null && ids.has(owner) && element?.law.is === "protection",
    );
  const probed = new Set([reading.red, reading.black]);
  const partedAt = (at: string) => jointHarm(wiring, shared.parts, wiresAt, probed, at);
  const need = needToBeNear(reading, prediction, trial, spread);
  const harms = (fault: SingleFault) => harmsOf(fault, { trial, named, nets, partedAt });
  const known = new Map<string, Shown>();
  const shownWith = (fault: SingleFault, key: string, harm: Harm): Shown => {
    const at = `${JSON.stringify(fault)} ${key}`;
    const shown = known.get(at) ?? trial.with(harm);
    known.set(at, shown);
    return shown;
  };
  const isPresence =
    quantity !== "ohms" &&
    value !== "OL" &&
    Math.abs(value) >
      Math.max(Math.abs(prediction.low ?? 0), Math.abs(prediction.high ?? 0)) +
        GHOST_SHARE * job.systemVoltage;
  return {
    reading,
    isPresence,
    trial,
    named,
    isFree: need.by <= 0,
    feels: feelsOf(trial, need, quantity === "ohms"),
    fits: (fault, blown) => {
      const tries = harms(fault);
      // it can't be put to this state: whether it gives the reading nobody can say
      if (tries === null) return true;
      const { full, partly, pinned } = tries;
      if (blown !== null) {
        const harm = { ...full, opens: [...full.opens, ...fuses(blown)] };
        const shown = shownWith(fault, [...blown].join(), harm);
        return isNear(reading, [shown.value], spread);
      }
      const all = shownWith(fault, "full", full);
      if (isNear(reading, [all.value], spread)) return true;
      const some = partly.map((harm, index) => shownWith(fault, `${index}`, harm));
      const sound = soundOf(prediction);
      const ends = all.blown.length > 0 ? [] : [all.value, ...pinned(all)];
      return isNear(
        reading,
        [
          ...sound,
          ...ends,
          ...some.filter((one) => one.blown.length === 0).map((one) => one.value),
        ],
        spread,
      );
    },
    blows: (fault) => {
      const tries = fault.is === "touch" || fault.is === "across" ? harms(fault) : null;
      return tries ? shownWith(fault, "full", tries.full).blown : [];
    },
  };
}

/** A fault in full, and in part. */
interface Harms {
  readonly full: Harm;
  readonly partly: readonly Harm[];
  /** What the probes would show if one line took on the volts of the other: how much of a short's volts its wires take nobody knows. */
  pinned(shown: Shown): readonly number[];
}

const through = (a: number, b: number, ohms: number): Branch => ({
  a,
  b,
  owner: null,
  element: null,
  acts: { is: "ohmic", ohms, low: ohms, high: ohms },
  gate: null,
  closedIn: null,
});

const none = () => [];

interface State {
  readonly trial: FaultTrial;
  readonly named: ReadonlyMap<string, readonly Branch[]>;
  readonly nets: Int32Array;
  partedAt(at: string): JointHarm | null;
}

/** Null where the state has no such place. */
function harmsOf(
  fault: SingleFault,
  { trial: { healthy, sound, placed }, named, nets, partedAt }: State,
): Harms | null {
  const { wiring } = healthy;
  const touch = (a: number, b: number) => ({
    full: { opens: [], adds: [through(a, b, SHORT_OHMS)] },
    partly: SOME_OHMS.map((ohms) => ({ opens: [], adds: [through(a, b, ohms)] })),
  });
  switch (fault.is) {
    case "stuck":
      return {
        full: { opens: [], adds: [], holds: new Map([[fault.by, fault.acts]]) },
        partly: [],
        pinned: none,
      };
    case "gone": {
      const opens = wiring.branches.filter(({ owner }) => owner === fault.part);
      return { full: { opens, adds: [] }, partly: [], pinned: none };
    }
    case "joint": {
      const known = partedAt(fault.fault.part);
      if (known) return { full: known.full, partly: [known.partly], pinned: none };
      return {
        full: { opens: [], adds: [], parts: fault.fault },
        partly: [{ opens: [], adds: [], parts: { ...fault.fault, mode: "high-resistance" } }],
        pinned: none,
      };
    }
    case "touch": {
      const [a, b] = [wiring.probe(fault.a), wiring.probe(fault.b)];
      if (!a.ok || !b.ok) return null;
      const { volts } = sound.point;
      const of = (node: number, from: number, to: number) =>
        volts[nets[node] === nets[from] ? to : node] as number;
      const pin = (from: number, to: number) =>
        of(placed.red, from, to) - of(placed.black, from, to);
      return {
        ...touch(a.node, b.node),
        pinned: ({ point }) => {
          const amps =
            Math.abs((point.volts[a.node] as number) - (point.volts[b.node] as number)) /
            SHORT_OHMS;
          return amps * WIRES_OHMS < SLACK * wiring.systemVoltage
            ? []
            : [pin(a.node, b.node), pin(b.node, a.node)];
        },
      };
    }
    default: {
      const branches = named.get(fault.branch);
      const [branch] = branches ?? [];
      if (!branches || !branch) return null;
      const { a, b, acts } = branch;
      if (fault.is === "across") return { ...touch(a, b), pinned: none };
      if (fault.is === "weak") {
        if (acts.is !== "source") return null;
        const weak = [0.75, 0.5, 0.25].map((share) => ({
          opens: branches,
          adds: [{ ...branch, acts: { ...acts, volts: acts.volts * share, ohms: acts.ohms * 10 } }],
        }));
        return { full: { opens: branches, adds: [] }, partly: weak, pinned: none };
      }
      const rusty = SOME_OHMS.flatMap((ohms) =>
        acts.is === "ohmic"
          ? [{ opens: [branch], adds: [{ ...branch, acts: { ...acts, ohms: acts.ohms + ohms } }] }]
          : [],
      );
      return { full: { opens: branches, adds: [] }, partly: rusty, pinned: none };
    }
  }
}

const soundOf = ({ predicted, low, high }: Prediction): readonly (number | "OL" | null)[] =>
  predicted === "OL" ? ["OL"] : low === null || high === null ? [null] : [low, high];

/** By how much a machine may differ that has the same fault. */
interface Spread {
  readonly systemVoltage: number;
  /** Half of what a good machine may show there, unit of the reading. */
  readonly own: number;
}

/** Whether the reading lies between these or near them. */
function isNear(
  { value, quantity }: Reading,
  shown: readonly (number | "OL" | null)[],
  { systemVoltage, own }: Spread,
): boolean {
  if (shown.length === 0) return false;
  const { share, digits } = METER_ERROR[quantity];
  if (quantity === "ohms") {
    const as = (one: number | "OL" | null) =>
      one === "OL" || one === null ? UNRELATED_OHMS : Math.min(one, UNRELATED_OHMS);
    const read = as(value);
    const slack = read * (share + SLACK) + JOINTS_OHMS + digits;
    const all = shown.map(as);
    return read >= Math.min(...all) * 0.5 - slack && read <= Math.max(...all) * 2 + slack;
  }
  if (value === "OL") return false;
  const all = shown.map((one) => (one === null || one === "OL" ? 0 : one));
  // a line that nothing holds shows ghost volts
  const ghost = shown.some((one) => one === null) ? GHOST_SHARE * systemVoltage : 0;
  const slack =
    quantity === "amps"
      ? Math.abs(value) * (share + 3 * SLACK) + digits + own
      : systemVoltage * SLACK + digits + ghost + own;
  return value >= Math.min(...all) - slack && value <= Math.max(...all) + slack;
}

/** How far a fault must move what the meter shows before the reading is near it; see `isNear`. */
function needToBeNear(
  { value, quantity }: Reading,
  { low, high }: Prediction,
  { sound }: FaultTrial,
  { systemVoltage, own }: Spread,
): Need {
  const { share, digits } = METER_ERROR[quantity];
  if (quantity === "ohms") {
    const as = (one: number | "OL" | null) =>
      one === "OL" || one === null ? UNRELATED_OHMS : Math.min(one, UNRELATED_OHMS);
    const read = as(value);
    const slack = read * (share + SLACK) + JOINTS_OHMS + digits;
    const [now, least, most] = [as(sound.value), as(low ?? sound.value), as(high ?? sound.value)];
    return read < now
      ? { by: Math.min(now, least) - 2 * (read + slack), way: -1 }
      : { by: (read - slack) / 2 - Math.max(now, most), way: 1 };
  }
  if (value === "OL") return { by: 0, way: 1 };
  const now = typeof sound.value === "number" ? sound.value : 0;
  const isAbove = value > now;
  const off = isAbove ? value - Math.max(now, high ?? now) : Math.min(now, low ?? now) - value;
  const way = isAbove ? 1 : -1;
  if (quantity === "amps")
    return { by: (off - Math.abs(value) * (share + 3 * SLACK) - digits - own) * SHUNT_OHMS, way };
  return { by: off - systemVoltage * (SLACK + GHOST_SHARE) - digits - own, way };
}
