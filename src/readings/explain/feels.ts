import { addTo } from "../../base/index.ts";
import { type Branch, type Decider, FUSE_TIMES, loosened } from "../../circuit/index.ts";
import { netsByWire } from "../wire-nets.ts";
import { type Feeler, type Felt, feelerAt, ohmFeelerAt } from "./feeler.ts";
import type { FaultTrial } from "./trial-fault.ts";

/** What a reading feels of the faults of its machine in its state, never too little. */
export interface Feels {
  touches(a: number, b: number): boolean;
  /** The same less cautiously, of the reading itself: where no proof hangs on it. */
  likelyTouches(a: number, b: number): boolean;
  /** Each two of many nodes whose touch it may feel, by their index; some of them several times. */
  touching: Feeler["touching"];
  /** Of branches of the wiring that open or corrode, all at once. */
  opens(branches: readonly Branch[]): boolean;
  /** Relays, modules and paths by id whose doing matters. */
  readonly deciders: ReadonlySet<string>;
  /** Fuses by id that matter when they blow. */
  readonly fuses: ReadonlySet<string>;
  /** Whether that is all: of very many relays and diodes that matter only the nearest are looked at. */
  readonly isWhole: boolean;
  /** What a touch may do to the fuses among these. */
  blowing(fuses: ReadonlySet<string>): readonly Feeler[];
}

/** How far a reading lies off, unit of the reading; amps as volts across the meter. */
export interface Need {
  /** Not above 0: any fault will do. */
  readonly by: number;
  /** -1 where it reads lower than a good machine, 1 where higher. */
  readonly way: 1 | -1;
}

/** Feelers of one reading, at most. */
const MOST_FEELERS = 60;
/** Share of the volts of all sources that a relay's coil moves by at least before it is said to. */
const LEAST_MOVE = 0.01;
/** Of a contact that ties a loose line on. */
const LOOSE_SIEMENS = 10;
/** A battery on a charger (our own, cautious). */
const CHARGED = 1.25;

/** Null where anything will do. */
export function feelsOf(trial: FaultTrial, need: Need, isOhms: boolean): Feels | null {
  const { healthy, sound, placed } = trial;
  const { wiring } = healthy;
  const { point } = sound;
  const felt = feltIn(trial, isOhms);
  const ends = [placed.red, placed.black] as const;
  if (need.by <= 0) return null;
  const first = isOhms
    ? ohmFeelerAt(felt, ends, need.by, need.way < 0)
    : feelerAt(felt, ends, need.by, need.way);
  const places = new Map<Branch, number>(wiring.branches.map((branch, index) => [branch, index]));
  const ohmsOf = (branch: Branch) => {
    const index = places.get(branch);
    const ohms = index === undefined ? Number.POSITIVE_INFINITY : (point.ohms[index] as number);
    // a bulb that goes out is cold
    return branch.acts.is === "filament" ? Math.min(ohms, branch.acts.cold) : ohms;
  };
  const opensBy = (feeler: Feeler) => (branches: readonly Branch[]) => {
    const all = branches.reduce((sum, branch) => {
      const ohms = ohmsOf(branch);
      return Number.isFinite(ohms) ? sum + feeler.share(branch.a, branch.b, ohms) : sum;
    }, 0);
    return all > 0 && feeler.opens(all);
  };
  const deciders = new Set<string>();
  const fuses = new Set<string>();
  const feelers: Feeler[] = [first];
  if (isOhms) {
    // nothing follows on a dead machine, but what is stuck lies there as well
    const opens = opensBy(first);
    for (const branch of wiring.branches) {
      if (branch.gate === null) continue;
      const isClosed = Number.isFinite(ohmsOf(branch));
      if (isClosed ? opens([branch]) : first.closes(branch.a, branch.b))
        deciders.add(branch.gate.by);
    }
  } else {
    const following = followers(trial, felt);
    const waiting = new Set(following);
    for (const feeler of feelers) {
      const opens = opensBy(feeler);
      for (const one of waiting) {
        const matters = one.branches.some((branch) =>
          Number.isFinite(ohmsOf(branch)) ? opens([branch]) : feeler.closes(branch.a, branch.b),
        );
        if (!matters) continue;
        waiting.delete(one);
        if (one.decider !== null) deciders.add(one.decider);
        if (one.fuse !== null) fuses.add(one.fuse);
        // what feeds a module matters where its path does
        for (const other of waiting) {
          if (one.power === null || other.decider !== one.power) continue;
          waiting.delete(other);
          deciders.add(one.power);
          feelers.push(...other.feelers());
        }
        if (one.fuse === null) feelers.push(...one.feelers());
        if (feelers.length > MOST_FEELERS) break;
      }
      if (feelers.length > MOST_FEELERS) break;
    }
  }
  const ways = feelers.map(opensBy);
  return {
    deciders,
    fuses,
    isWhole: feelers.length <= MOST_FEELERS,
    touching: (nodes, found) => {
      for (const one of feelers) one.touching(nodes, found);
    },
    touches: (a, b) => feelers.some((one) => one.touches(a, b)),
    likelyTouches: (a, b) => feelers.some((one) => one.likelyTouches(a, b)),
    opens: (branches) => ways.some((opens) => opens(branches)),
    blowing: (ids) =>
      followers(trial, felt)
        .filter(({ fuse }) => fuse !== null && ids.has(fuse))
        .flatMap((one) => one.feelers()),
  };
}

const known = new WeakMap<FaultTrial["sound"]["point"], Felt>();

function feltIn(
  { healthy: { wiring }, sound: { point }, meter }: FaultTrial,
  isOhms: boolean,
): Felt {
  const before = known.get(point);
  if (before) return before;
  const branches = [...wiring.branches, ...meter];
  const nets = netsByWire(wiring);
  const ofNet = new Float64Array(wiring.nodeCount);
  branches.forEach(({ a, b, acts }, index) => {
    const [one, other] = [nets[a] as number, nets[b] as number];
    const ohms = point.ohms[index] as number;
    if (one === other || !Number.isFinite(ohms)) return;
    const siemens = 1 / (acts.is === "filament" ? Math.min(ohms, acts.cold) : ohms);
    ofNet[one] = (ofNet[one] as number) + siemens;
    ofNet[other] = (ofNet[other] as number) + siemens;
  });
  const most = wiring.branches.reduce(
    (sum, { acts }) => sum + (acts.is === "source" ? acts.high * CHARGED : 0),
    0,
  );
  // of a dead machine no diode conducts, whatever touches
  const loose = loosened(point, isOhms ? [] : branches);
  // what hangs loose leads on through what ties it on
  branches.forEach(({ a, b }, index) => {
    if (Number.isFinite(point.ohms[index] as number) || loose.piece[a] !== loose.piece[b]) return;
    if (point.factored.piece[a] === point.factored.piece[b]) return;
    for (const net of [nets[a] as number, nets[b] as number])
      ofNet[net] = (ofNet[net] as number) + LOOSE_SIEMENS;
  });
  const away = Float64Array.from(nets, (net) => ofNet[net] as number);
  const between = new Map<number, number>();
  const ohms = (a: number, b: number) => {
    const key = Math.min(a, b) * wiring.nodeCount + Math.max(a, b);
    const seen = between.has(key) ? null : loose.transfer(a, b);
    const found = seen
      ? (seen[a] as number) - (seen[b] as number)
      : (between.get(key) ?? Number.POSITIVE_INFINITY);
    between.set(key, found);
    return found;
  };
  const felt: Felt = { loose, apart: point.factored.piece, away, most, ohms };
  known.set(point, felt);
  return felt;
}

/** Something that turns by itself when volts move, and what turns with it. */
interface Follower {
  readonly decider: string | null;
  readonly fuse: string | null;
  /** Id of the decider that feeds it. */
  readonly power: string | null;
  readonly branches: readonly Branch[];
  feelers(): readonly Feeler[];
}

function followers(trial: FaultTrial, felt: Felt): readonly Follower[] {
  const { healthy, sound } = trial;
  const { wiring } = healthy;
  const { point, states } = sound;
  const least = LEAST_MOVE * felt.most;
  const at = (ends: readonly [number, number], need: number, way: 1 | 0 | -1) =>
    feelerAt(felt, ends, Math.max(least, need), way);
  const volts = (a: number, b: number) => (point.volts[a] as number) - (point.volts[b] as number);
  const gated = new Map<string, Branch[]>();
  const found: Follower[] = [];
  wiring.branches.forEach((branch, index) => {
    const { gate, acts, a, b, owner, element } = branch;
    if (gate !== null) addTo(gated, gate.by, branch);
    const none = { decider: null, fuse: null, power: null, branches: [branch] };
    if (acts.is === "junction") {
      const conducts = Number.isFinite(point.ohms[index] as number);
      const need = conducts ? 0 : acts.volts - volts(a, b);
      found.push({ ...none, feelers: () => [at([a, b], need, conducts ? -1 : 1)] });
    }
    const law = element?.law;
    if (law?.is === "protection" && owner !== null) {
      const ohms = point.ohms[index] as number;
      const need = (FUSE_TIMES * law.amps - Math.abs(point.amps[index] as number)) * ohms;
      // its drop is far below what moves anything else
      const feelers = () =>
        Number.isFinite(ohms) ? [feelerAt(felt, [a, b], Math.max(need, 1e-6), 0)] : [];
      found.push({ ...none, fuse: owner, feelers });
    }
  });
  for (const decider of wiring.deciders) {
    found.push({
      decider: decider.id,
      fuse: null,
      power: decider.is === "level" ? decider.power : null,
      branches: gated.get(decider.id) ?? [],
      feelers: () => feelersOf(decider, states.get(decider.id) ?? false, volts, at),
    });
  }
  return found;
}

/** Shares of system voltage at which an input turns lie between these: either counts. */
function feelersOf(
  decider: Decider,
  acts: boolean,
  volts: (a: number, b: number) => number,
  at: (ends: readonly [number, number], need: number, way: 1 | 0 | -1) => Feeler,
): readonly Feeler[] {
  switch (decider.is) {
    case "coil": {
      const now = Math.abs(volts(decider.a, decider.b));
      const need = acts ? now - decider.dropOut : decider.pullIn - now;
      return [at([decider.a, decider.b], need, 0)];
    }
    case "fed":
      return decider.pairs.map(([a, b]) => at([a, b], Math.abs(volts(a, b) - decider.minVolts), 0));
    case "level": {
      const { input, grounds } = decider;
      // how far it lies from its levels hangs on which of them it stands at: any move counts
      return input === null ? [] : grounds.map((ground) => at([input, ground], 0, 0));
    }
  }
}
