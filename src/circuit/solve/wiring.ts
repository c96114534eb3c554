import {
  type Id,
  isFixedProbe,
  type Job,
  ownerOf,
  type Position,
  type Probe,
  type When,
} from "../../job/index.ts";
import { restPosition } from "../kinds/index.ts";
import { type Assembly, assemble, type Frame } from "./assemble.ts";
import { assemblyWithout } from "./assembly-without.ts";
import type { Fault } from "./fault.ts";
import { Kept } from "./kept.ts";
import type { Conditions } from "./lower.ts";
import { type Net, netOf, netWithout } from "./net.ts";

/** A machine's circuit put into one state: nodes, what lies between them, and where probes go. */
export interface Wiring
  extends Pick<
    Assembly,
    "nodeCount" | "branches" | "deciders" | "unknowns" | "draws" | "grounds" | "systemVoltage"
  > {
  /** Where each switch stands. */
  readonly positions: ReadonlyMap<Id, Position>;
  /** Reasons why `when` can't be meant, e.g. a position that the switch has not. */
  readonly problems: readonly string[];
  /** The branches made ready for solving; shared by all positions of the switches. */
  readonly net: Net;
  probe(probe: Probe, side?: Side): Probed;
}

/** The harness's side of a joint, or the part's own. */
export type Side = "harness" | "own";

export type Probed =
  | { readonly ok: true; readonly node: number }
  /** `nothing`: no such place. `either`: an opened joint whose two halves have one name. */
  | { readonly ok: false; readonly why: "nothing" | "either"; readonly sentence: string };

/** A machine in a frame, made ready. */
export interface Ready {
  readonly assembly: Assembly;
  readonly net: Net;
  readonly rest: ReadonlyMap<Id, Position>;
}

/** Machines with nothing out, and others. */
const whole = new Kept<Ready>();
const ready = new Kept<Ready>();

/** How joints count: see `Conditions`. What doesn't hang on the switches is worked out once. */
export function wire(
  job: Job,
  machine: Id | null,
  when: When,
  joints: Conditions["joints"] = "ideal",
  faults: readonly Fault[] = [],
): Wiring {
  const out = [...new Set([...(when.unplugged ?? []), ...(when.removed ?? [])])].sort();
  const frame: Frame = { engine: when.engine ?? "off", out, joints, faults };
  return wiringOf(readyFor(job, machine, frame), job, when);
}

function readyFor(job: Job, machine: Id | null, frame: Frame): Ready {
  const { engine, out, joints, faults } = frame;
  const key = JSON.stringify([machine, engine, out, joints, faults]);
  if (faults.length > 0) return ready.of(job, machine, key, () => readyAfresh(job, machine, frame));
  if (out.length === 0) return whole.of(job, machine, key, () => readyAfresh(job, machine, frame));
  return ready.of(job, machine, key, () => {
    const all = readyFor(job, machine, { ...frame, out: [] });
    const found = assemblyWithout(all.assembly, job, out);
    return found
      ? { assembly: found.assembly, net: netWithout(all.net, found, all.rest), rest: all.rest }
      : readyAfresh(job, machine, frame);
  });
}

/** The machine in a frame put together from nothing. */
export function readyAfresh(job: Job, machine: Id | null, frame: Frame): Ready {
  const assembly = assemble(job, machine, frame);
  const rest = new Map<Id, Position>();
  for (const part of assembly.circuit.parts) {
    const position = part.kind === "switch" ? restPosition(part) : undefined;
    if (position !== undefined) rest.set(part.id, position);
  }
  return { assembly, net: netOf(assembly, rest), rest };
}

export function wiringOf({ assembly, net, rest }: Ready, job: Job, when: When): Wiring {
  return {
    nodeCount: assembly.nodeCount,
    branches: assembly.branches,
    deciders: assembly.deciders,
    unknowns: assembly.unknowns,
    draws: assembly.draws,
    grounds: assembly.grounds,
    systemVoltage: assembly.systemVoltage,
    positions: turned(rest, when),
    problems: problemsOf(assembly, job, when),
    net,
    probe: (probe, side = "harness") => probeIn(assembly, probe, side),
  };
}

function turned(rest: ReadonlyMap<Id, Position>, when: When): ReadonlyMap<Id, Position> {
  const moved = Object.entries(when.switches ?? {}) as [Id, Position][];
  if (moved.length === 0) return rest;
  const positions = new Map(rest);
  for (const [id, position] of moved) positions.set(id, position);
  return positions;
}

function probeIn(assembly: Assembly, probe: Probe, side: Side): Probed {
  const { open, joints, batteries, parts, cavities } = assembly;
  const nodeOf = (point: string): Probed => {
    const node = assembly.nodeAt(point);
    return node === null ? noSuch(probe) : { ok: true, node };
  };
  if (isFixedProbe(probe)) {
    if (probe === "chassis") return nodeOf("chassis");
    const [battery, second] = batteries;
    if (!battery) return nothing(`No battery is drawn, so ${probe} is nowhere.`);
    if (second)
      return nothing(
        `There are ${batteries.length} batteries: say which one, e.g. ${battery.id}:+.`,
      );
    return nodeOf(`${battery.id}:${probe === "battery+" ? "+" : "-"}`);
  }
  const tied = cavities.get(probe);
  if (tied !== undefined && tied.length === 0) return nodeOf("nowhere");
  const ref = tied?.[0] ?? probe;
  const part = parts.get(ownerOf(ref));
  if (!part) return noSuch(probe);
  const wantsOwn = side === "own" || (tied === undefined && part.kind === "module");
  if (!open.has(ref)) return nodeOf(ref);
  if (wantsOwn) return nodeOf(`own ${ref}`);
  const ends = joints.has(part.id) ? (assembly.endsAt.get(ref) ?? []) : [];
  if (ends.length > 1) {
    return {
      ok: false,
      why: "either",
      sentence: `${ref} is open, and each half of it is a different point: meter at the far end of the wire.`,
    };
  }
  return nodeOf(ends[0] ?? ref);
}

const nothing = (sentence: string): Probed => ({ ok: false, why: "nothing", sentence });

const noSuch = (probe: Probe): Probed =>
  nothing(`There is no ${probe} on this machine: the probe is on nothing.`);

function problemsOf({ parts }: Assembly, job: Job, when: When): readonly string[] {
  const problems: string[] = [];
  for (const [id, position] of Object.entries(when.switches ?? {}) as [Id, Position][]) {
    const found = parts.get(id);
    if (found?.kind !== "switch") problems.push(`${id} is not a switch of this machine.`);
    else if (!found.positions.includes(position))
      problems.push(`${id} has no position "${position}"; it has ${found.positions.join(", ")}.`);
    else if (restPosition(found) === undefined) problems.push(`${id} has no positions.`);
  }
  for (const id of [...(when.unplugged ?? []), ...(when.removed ?? [])]) {
    if (!parts.has(id) && !job.plugs.some((plug) => plug.id === id))
      problems.push(`There is no ${id} on this machine to take out.`);
  }
  return problems;
}
