import type { Id, Position } from "../../job/index.ts";
import type { Assembly } from "./assemble.ts";
import type { AssemblyWithout } from "./assembly-without.ts";
import { BegunMeshes } from "./begun-meshes.ts";
import type { Branch } from "./branch.ts";
import { type Plan, planElimination, withBranches, withMoved } from "./elimination-plan.ts";
import { nominal, type OperatingPoint, type Setting } from "./operating-point.ts";
import { Workspace } from "./star-mesh.ts";
import { WorkedCircuit } from "./worked-circuit.ts";

/** Branches made ready for solving, over and over, with different ones of them conducting. */
export interface Net {
  readonly nodeCount: number;
  readonly branches: readonly Branch[];
  /** A list of branches that act like these, one by one, maybe between other nodes: the same for many nets. */
  readonly like: readonly Branch[];
  /** Nodes of each branch. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly plan: Plan;
  readonly work: Workspace;
  /** Of the net that it extends, where it extends one. */
  readonly begun: BegunMeshes;
  readonly nominal: Settings;
  readonly filaments: readonly number[];
  readonly junctions: readonly number[];
  /** Sources and junctions: what can push. */
  readonly pushing: Int32Array;
  readonly gates: readonly Gate[];
  /** Their branches. */
  readonly gated: readonly number[];
  /** Place of each decider in the list of the assembly, by id. */
  readonly deciderAt: ReadonlyMap<string, number>;
  /**
   * Every switch at rest and nothing pulled in: where every solution starts from, so that the same
   * question has the same answer whatever was asked before.
   */
  start(quiet: boolean): OperatingPoint;
}

/** What may keep a branch from conducting: a decider in another state, a switch in another position. */
interface Gate {
  /** Of the branch. */
  readonly index: number;
  /** Place of the decider; -1 where there is none. */
  readonly decider: number;
  readonly on: 0 | 1;
  readonly contact: { readonly of: Id; readonly closedIn: readonly Position[] } | null;
}

/** What conducts. */
export interface Conducting {
  /** By branch: 1 where it does. */
  readonly closed: Uint8Array;
  /** The only branches that may not. */
  readonly doubtful: readonly number[];
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
  const { nodeCount, branches, grounds, deciders } = assembly;
  const deciderAt = new Map(deciders.map(({ id }, at) => [id, at]));
  const plan = planElimination(nodeCount, branches, grounds);
  const work = new Workspace(nodeCount);
  const net: Net = {
    nodeCount,
    branches,
    like: branches,
    plan,
    work,
    begun: new BegunMeshes(plan, work),
    nominal: settingsOf(branches, nominal),
    deciderAt,
    ...listed(branches, 0, deciderAt),
    start: startOnce((quiet) => {
      const nothing = new Uint8Array(deciders.length);
      const closed = conducting(net, nothing, rest);
      return WorkedCircuit.begun(net, net.nominal, quiet, closed).point();
    }),
  };
  return net;
}

/** The net of a machine with something out, made of the net of the whole; it starts from where that does. */
export function netWithout(
  whole: Net,
  { assembly, more, moved }: AssemblyWithout,
  rest: ReadonlyMap<Id, Position>,
): Net {
  const a = whole.a.slice();
  const b = whole.b.slice();
  for (const one of moved) {
    a[one.index] = one.a;
    b[one.index] = one.b;
  }
  const plan = withMoved(whole.plan, more, moved);
  const work = new Workspace(assembly.nodeCount);
  const net: Net = {
    ...whole,
    nodeCount: assembly.nodeCount,
    branches: assembly.branches,
    a,
    b,
    plan,
    work,
    begun: new BegunMeshes(plan, work),
    start: startOnce((quiet) => {
      const nothing = new Uint8Array(assembly.deciders.length);
      const closed = conducting(net, nothing, rest);
      const places = moved.map(({ index }) => index);
      return WorkedCircuit.from(whole.start(quiet), net, quiet, closed, places).point();
    }),
  };
  return net;
}

function startOnce(make: Net["start"]): Net["start"] {
  const starts: { loud: OperatingPoint | null; quiet: OperatingPoint | null } = {
    loud: null,
    quiet: null,
  };
  return (quiet) => {
    const name = quiet ? "quiet" : "loud";
    const known = starts[name] ?? make(quiet);
    starts[name] = known;
    return known;
  };
}

const extended = new WeakMap<readonly Branch[], { readonly from: Net; readonly net: Net }>();

/** The same net with something held between its nodes for the moment. */
export function netWith(net: Net, extra: readonly Branch[]): Net {
  if (extra.length === 0) return net;
  const known = extended.get(extra);
  if (known?.from === net) return known.net;
  const made = extend(net, extra);
  extended.set(extra, { from: net, net: made });
  return made;
}

function extend(net: Net, extra: readonly Branch[]): Net {
  const found = listed(extra, net.branches.length, net.deciderAt);
  return {
    ...net,
    branches: [...net.branches, ...extra],
    a: joinedPlaces(net.a, found.a),
    b: joinedPlaces(net.b, found.b),
    plan: withBranches(net.plan, extra),
    nominal: joinedSettings(net.nominal, settingsOf(extra, nominal)),
    filaments: withMore(net.filaments, found.filaments),
    junctions: withMore(net.junctions, found.junctions),
    pushing: joinedPlaces(net.pushing, found.pushing),
    gates: withMore(net.gates, found.gates),
    gated: withMore(net.gated, found.gated),
  };
}

/** The very list where nothing comes to it. */
const withMore = <T>(list: readonly T[], more: readonly T[]): readonly T[] =>
  more.length === 0 ? list : [...list, ...more];

/** `states`: 1 for each decider that is pulled in, fed, or closing its path. */
export function conducting(
  net: Net,
  states: Uint8Array,
  positions: ReadonlyMap<Id, Position>,
): Conducting {
  const closed = new Uint8Array(net.branches.length).fill(1);
  for (const index of turnedOpen(net, positions)) closed[index] = 0;
  for (const { index, decider, on } of net.gates) {
    if (decider >= 0 && (states[decider] ?? 0) !== on) closed[index] = 0;
  }
  return { closed, doubtful: net.gated };
}

const lastTurned = new WeakMap<readonly Gate[], { positions: unknown; open: readonly number[] }>();

/** Branches that the switches let not conduct; the same positions are asked for round after round. */
function turnedOpen({ gates }: Net, positions: ReadonlyMap<Id, Position>): readonly number[] {
  const last = lastTurned.get(gates);
  if (last?.positions === positions) return last.open;
  const open: number[] = [];
  for (const { index, contact } of gates) {
    if (contact === null) continue;
    const position = positions.get(contact.of);
    if (position === undefined || !contact.closedIn.includes(position)) open.push(index);
  }
  lastTurned.set(gates, { positions, open });
  return open;
}

function listed(branches: readonly Branch[], from: number, deciderAt: ReadonlyMap<string, number>) {
  const filaments: number[] = [];
  const junctions: number[] = [];
  const pushing: number[] = [];
  const gates: Gate[] = [];
  branches.forEach(({ acts: { is }, gate, closedIn, owner }, at) => {
    const index = from + at;
    if (is === "filament") filaments.push(index);
    if (is === "junction") junctions.push(index);
    if (is === "junction" || is === "source") pushing.push(index);
    if (gate === null && closedIn === null) return;
    gates.push({
      index,
      // a decider that is not there, as of a burnt-out coil, never acts
      decider: gate === null ? -1 : (deciderAt.get(gate.by) ?? deciderAt.size),
      on: gate?.on ? 1 : 0,
      contact: closedIn === null || owner === null ? null : { of: owner, closedIn },
    });
  });
  return {
    a: Int32Array.from(branches, ({ a }) => a),
    b: Int32Array.from(branches, ({ b }) => b),
    filaments,
    junctions,
    pushing: Int32Array.from(pushing),
    gates,
    gated: gates.map(({ index }) => index),
  };
}

/** Those of one list of branches and of another that goes on after it. */
export const joinedSettings = (first: Settings, second: Settings): Settings => ({
  ohms: joined(first.ohms, second.ohms),
  cold: joined(first.cold, second.cold),
  volts: joined(first.volts, second.volts),
});

function joined(first: Float64Array, second: Float64Array): Float64Array {
  const both = new Float64Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

function joinedPlaces(first: Int32Array, second: Int32Array): Int32Array {
  const both = new Int32Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
