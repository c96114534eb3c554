import {
  type Bench,
  type Branch,
  between,
  held,
  nominal,
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

/** Relays near their pull-in, by the id of what decides them, with what there is to doubt. */
export function marginalRelays({ wiring, settled }: Bench): ReadonlyMap<string, string> {
  const near = new Map<string, string>();
  for (const decider of wiring.deciders) {
    if (decider.is !== "coil" || decider.latching) continue;
    const volts = Math.abs(between(settled.point, decider.a, decider.b) ?? 0);
    const isPulled = settled.states.get(decider.id) ?? false;
    const isNear = isPulled
      ? volts < decider.pullIn * SURELY_PULLS_IN
      : volts > decider.pullIn * MAY_PULL_IN;
    if (isNear) near.set(decider.id, `whether ${decider.part} pulls in with ${volts.toFixed(1)} V`);
  }
  return near;
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
    point: held(wiring, settled.states, extra, nominal, false, isOpen),
  };
}
