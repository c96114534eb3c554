import type { Id, Position } from "../../job/index.ts";
import type { Assembly } from "./assemble.ts";
import type { Branch } from "./branch.ts";
import { type Plan, planElimination, withBranches } from "./elimination-plan.ts";
import { nominal, type OperatingPoint, operate, type Setting } from "./operating-point.ts";

/** Branches made ready for solving, over and over, with different ones of them conducting. */
export interface Net {
  readonly nodeCount: number;
  readonly branches: readonly Branch[];
  readonly plan: Plan;
  readonly nominal: Settings;
  readonly filaments: readonly number[];
  readonly junctions: readonly number[];
  /** Sources and junctions: what can push. */
  readonly pushing: readonly number[];
  readonly gates: readonly Gate[];
  /**
   * Every switch at rest and nothing pulled in: where every solution starts from, so that the same
   * question has the same answer whatever was asked before.
   */
  start(quiet: boolean): OperatingPoint;
}

/** What may keep a branch from conducting. */
interface Gate {
  readonly index: number;
  readonly branch: Branch;
}

/** Numbers of each branch, as in `Setting`. */
export interface Settings {
  readonly ohms: Float64Array;
  readonly cold: Float64Array;
  readonly volts: Float64Array;
}

export function settingsOf(
  branches: readonly Branch[],
  setting: (branch: Branch) => Setting,
): Settings {
  const ohms = new Float64Array(branches.length);
  const cold = new Float64Array(branches.length);
  const volts = new Float64Array(branches.length);
  branches.forEach((branch, index) => {
    const own = setting(branch);
    ohms[index] = own.ohms;
    cold[index] = own.cold;
    volts[index] = own.volts;
  });
  return { ohms, cold, volts };
}

export function netOf(assembly: Assembly, rest: ReadonlyMap<Id, Position>): Net {
  const { nodeCount, branches, grounds } = assembly;
  const starts: { loud: OperatingPoint | null; quiet: OperatingPoint | null } = {
    loud: null,
    quiet: null,
  };
  const net: Net = {
    nodeCount,
    branches,
    plan: planElimination(nodeCount, branches, grounds),
    nominal: settingsOf(branches, nominal),
    ...listed(branches, 0),
    start(quiet) {
      const name = quiet ? "quiet" : "loud";
      const known = starts[name];
      if (known) return known;
      const closed = conducting(net, new Map(), rest);
      const found = operate(net, closed, net.nominal, quiet, null);
      starts[name] = found;
      return found;
    },
  };
  return net;
}

/** The same net with something held between its nodes for the moment. */
export function netWith(net: Net, extra: readonly Branch[]): Net {
  if (extra.length === 0) return net;
  const more = settingsOf(extra, nominal);
  const found = listed(extra, net.branches.length);
  return {
    ...net,
    branches: [...net.branches, ...extra],
    plan: withBranches(net.plan, extra),
    nominal: {
      ohms: joined(net.nominal.ohms, more.ohms),
      cold: joined(net.nominal.cold, more.cold),
      volts: joined(net.nominal.volts, more.volts),
    },
    filaments: [...net.filaments, ...found.filaments],
    junctions: [...net.junctions, ...found.junctions],
    pushing: [...net.pushing, ...found.pushing],
    gates: [...net.gates, ...found.gates],
  };
}

/** 1 for each branch that its decider or switch lets conduct. */
export function conducting(
  net: Net,
  states: ReadonlyMap<string, boolean>,
  positions: ReadonlyMap<Id, Position>,
): Uint8Array {
  const closed = new Uint8Array(net.branches.length).fill(1);
  for (const { index, branch } of net.gates) {
    const { gate, closedIn, owner } = branch;
    const position = closedIn === null || owner === null ? undefined : positions.get(owner);
    const isOpen =
      (gate !== null && (states.get(gate.by) ?? false) !== gate.on) ||
      (closedIn !== null && (position === undefined || !closedIn.includes(position)));
    if (isOpen) closed[index] = 0;
  }
  return closed;
}

function listed(branches: readonly Branch[], from: number) {
  const filaments: number[] = [];
  const junctions: number[] = [];
  const pushing: number[] = [];
  const gates: Gate[] = [];
  branches.forEach((branch, at) => {
    const index = from + at;
    const { is } = branch.acts;
    if (is === "filament") filaments.push(index);
    if (is === "junction") junctions.push(index);
    if (is === "junction" || is === "source") pushing.push(index);
    if (branch.gate !== null || branch.closedIn !== null) gates.push({ index, branch });
  });
  return { filaments, junctions, pushing, gates };
}

function joined(first: Float64Array, second: Float64Array): Float64Array {
  const both = new Float64Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
