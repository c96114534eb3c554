import {
  type Bench,
  type Branch,
  between,
  type Decider,
  HIGH_LEVEL,
  held,
  LOW_LEVEL,
  type OperatingPoint,
  type Unknown,
} from "../circuit/index.ts";
import { type Loose, type LooseVolts, looseIn } from "./unsaid-values.ts";

/** What nobody can know about a state: what nobody has said, and relays that may go either way. */
export interface Uncertain {
  readonly unknowns: readonly Unknown[];
  /** The state with all that is in doubt open. */
  readonly point: OperatingPoint;
}

/**
 * Shares of a relay's pull-in volts between which one healthy machine's relay pulls in and
 * another's does not: a low battery, a hot coil, a few wires of half an ohm (our own, cautious).
 */
const MAY_PULL_IN = 0.85;
const SURELY_PULLS_IN = 1.1;

const known = new WeakMap<Bench, Uncertain>();

/** The doubts of a solved state, and beside them its relays that are near their pull-in. */
export function uncertainIn(bench: Bench): Uncertain {
  const before = known.get(bench);
  if (before) return before;
  const found = withMarginal(bench);
  known.set(bench, found);
  return found;
}

/** Volts either side of a module input's threshold, as a share of system voltage (our own, cautious). */
const NEAR_LEVEL = 0.08;

/**
 * Relays near their pull-in, modules near the volts that they need, and inputs near the level at
 * which they act, by the id of what decides them, with what there is to doubt.
 */
export function marginalRelays({ wiring, settled }: Bench): ReadonlyMap<string, string> {
  const near = new Map<string, string>();
  if (wiring.deciders.length === 0) return near;
  const loose = looseIn(wiring, settled.states, settled.branches);
  for (const decider of wiring.deciders) {
    const acts = settled.states.get(decider.id) ?? false;
    const volts = voltsAt(decider, settled.point);
    if (volts === null || (decider.is === "coil" && decider.latching)) continue;
    if (isMarginal(decider, volts, acts, wiring.systemVoltage))
      near.set(decider.id, doubtAbout(decider, volts));
    else if (loose) {
      const by = unsaidThatTurns(decider, loose, acts, wiring.systemVoltage);
      if (by !== null) near.set(decider.id, `what ${by} has, by which ${decider.part} acts or not`);
    }
  }
  return near;
}

/** Share of system voltage by which other sizes of unsaid parts must move what a relay gets to count. */
const FELT = 0.02;

/** The part that nobody has said the value of, with which a relay or module may lie the other way; else null. */
function unsaidThatTurns(
  decider: Decider,
  loose: Loose,
  acts: boolean,
  systemVoltage: number,
): string | null {
  const [usual, other] = [voltsAt(decider, loose.usual), voltsAt(decider, loose.other)];
  if (usual === null || other === null) return null;
  if (Math.abs(usual - other) < FELT * systemVoltage) return null;
  const turning = pairsOf(decider, loose.usual).flatMap(([a, b]): LooseVolts[] => {
    const range = loose.range(a, b);
    return range ? [range] : [];
  });
  const [first] = turning;
  if (!first) return null;
  const low = Math.max(...turning.map((range) => range.low));
  const high = Math.max(...turning.map((range) => range.high));
  const [least, most] =
    decider.is !== "coil"
      ? [low, high]
      : [low * high <= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high)), Math.max(-low, high)];
  const turns =
    decider.is === "level"
      ? isMarginal(decider, least, acts, systemVoltage) ||
        isMarginal(decider, most, acts, systemVoltage) ||
        isAbove(decider, least, systemVoltage) !== isAbove(decider, most, systemVoltage)
      : isMarginal(decider, acts ? least : most, acts, systemVoltage);
  return turns ? first.by : null;
}

/** Between what a decider measures. */
function pairsOf(decider: Decider, point: OperatingPoint): readonly (readonly [number, number])[] {
  switch (decider.is) {
    case "coil":
      return [[decider.a, decider.b]];
    case "fed":
      return decider.pairs;
    case "level": {
      const { input, grounds } = decider;
      const ground = grounds.find((one) => input !== null && between(point, input, one) !== null);
      return input === null || ground === undefined ? [] : [[input, ground]];
    }
  }
}

/** What a decider goes by; null where nothing ties it to anything. */
function voltsAt(decider: Decider, point: OperatingPoint): number | null {
  switch (decider.is) {
    case "coil":
      return Math.abs(between(point, decider.a, decider.b) ?? 0);
    case "fed":
      return Math.max(...decider.pairs.map(([a, b]) => between(point, a, b) ?? 0));
    case "level": {
      const { input, grounds } = decider;
      if (input === null) return null;
      for (const ground of grounds) {
        const volts = between(point, input, ground);
        if (volts !== null) return volts;
      }
      return null;
    }
  }
}

const thresholdOf = ({ active }: Extract<Decider, { is: "level" }>, systemVoltage: number) =>
  (active === "high" ? HIGH_LEVEL : LOW_LEVEL) * systemVoltage;

const isAbove = (
  decider: Extract<Decider, { is: "level" }>,
  volts: number,
  systemVoltage: number,
): boolean => volts > thresholdOf(decider, systemVoltage);

function isMarginal(
  decider: Decider,
  volts: number,
  acts: boolean,
  systemVoltage: number,
): boolean {
  if (decider.is === "level")
    return Math.abs(volts - thresholdOf(decider, systemVoltage)) < NEAR_LEVEL * systemVoltage;
  const needed = decider.is === "coil" ? decider.pullIn : decider.minVolts;
  return acts ? volts < needed * SURELY_PULLS_IN : volts > needed * MAY_PULL_IN;
}

function doubtAbout({ is, part }: Decider, volts: number): string {
  const having = `with ${volts.toFixed(1)} V`;
  switch (is) {
    case "coil":
      return `whether ${part} pulls in ${having}`;
    case "fed":
      return `whether ${part} works ${having}`;
    case "level":
      return `whether ${part} takes ${volts.toFixed(1)} V for on or for off`;
  }
}

function withMarginal(bench: Bench): Uncertain {
  const { wiring, settled, doubts } = bench;
  const near = marginalRelays(bench);
  if (near.size === 0) return doubts;
  const isNear = (branch: Branch) => branch.gate !== null && near.has(branch.gate.by);
  const contacts = settled.branches.filter(isNear).map((branch): Unknown => {
    const by = branch.gate?.by ?? "";
    return {
      part: branch.owner ?? "",
      nodes: [branch.a, branch.b],
      joint: true,
      what: near.get(by) ?? "",
    };
  });
  const extra = settled.branches.slice(wiring.branches.length);
  const isOpen = (branch: Branch) => isNear(branch) || doubts.isDoubted(branch);
  return {
    unknowns: [...doubts.unknowns, ...contacts],
    point: held(wiring, settled.states, extra, null, false, isOpen),
  };
}
