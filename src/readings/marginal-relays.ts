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
  for (const decider of wiring.deciders) {
    const acts = settled.states.get(decider.id) ?? false;
    const volts = voltsAt(decider, settled.point);
    if (volts === null || (decider.is === "coil" && decider.latching)) continue;
    if (isMarginal(decider, volts, acts, wiring.systemVoltage))
      near.set(decider.id, doubtAbout(decider, volts));
  }
  return near;
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

function isMarginal(
  decider: Decider,
  volts: number,
  acts: boolean,
  systemVoltage: number,
): boolean {
  if (decider.is === "level") {
    const threshold = (decider.active === "high" ? HIGH_LEVEL : LOW_LEVEL) * systemVoltage;
    return Math.abs(volts - threshold) < NEAR_LEVEL * systemVoltage;
  }
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
