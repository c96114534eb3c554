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
import type { Fault } from "./fault.ts";
import { Kept } from "./kept.ts";
import type { Conditions } from "./lower.ts";
import { type Net, netOf } from "./net.ts";

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

interface Ready {
  readonly assembly: Assembly;
  readonly net: Net;
  readonly rest: ReadonlyMap<Id, Position>;
}

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
  const key = JSON.stringify([machine, frame.engine, out, joints, faults]);
  const { assembly, net, rest } = ready.of(job, machine, key, () => makeReady(job, machine, frame));
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

function makeReady(job: Job, machine: Id | null, frame: Frame): Ready {
  const assembly = assemble(job, machine, frame);
  const rest = new Map<Id, Position>();
  for (const part of assembly.circuit.parts) {
    const position = part.kind === "switch" ? restPosition(part) : undefined;
    if (position !== undefined) rest.set(part.id, position);
  }
  return { assembly, net: netOf(assembly, rest), rest };
}

function turned(rest: ReadonlyMap<Id, Position>, when: When): ReadonlyMap<Id, Position> {
  const moved = Object.entries(when.switches ?? {}) as [Id, Position][];
  if (moved.length === 0) return rest;
  const positions = new Map(rest);
  for (const [id, position] of moved) positions.set(id, position);
  return positions;
}

function probeIn(assembly: Assembly, probe: Probe, side: Side): Probed {
  const { points, open, joints, batteries, parts, cavities } = assembly;
  const node = (point: number | null): Probed =>
    point === null ? noSuch(probe) : { ok: true, node: assembly.nodeOf[point] as number };
  if (isFixedProbe(probe)) {
    if (probe === "chassis") return node(points.find("chassis"));
    const [battery, second] = batteries;
    if (!battery) return nothing(`No battery is drawn, so ${probe} is nowhere.`);
    if (second)
      return nothing(
        `There are ${batteries.length} batteries: say which one, e.g. ${battery.id}:+.`,
      );
    return node(points.find(`${battery.id}:${probe === "battery+" ? "+" : "-"}`));
  }
  const tied = cavities.get(probe);
  if (tied !== undefined && tied.length === 0) return node(points.find("nowhere"));
  const ref = tied?.[0] ?? probe;
  const part = parts.get(ownerOf(ref));
  if (!part) return noSuch(probe);
  const wantsOwn = side === "own" || (tied === undefined && part.kind === "module");
  if (!open.has(ref)) return node(points.find(ref));
  if (wantsOwn) return node(points.find(`own ${ref}`));
  const ends = joints.has(part.id) ? (assembly.endsAt.get(ref) ?? []) : [];
  if (ends.length > 1) {
    return {
      ok: false,
      why: "either",
      sentence: `${ref} is open, and each half of it is a different point: meter at the far end of the wire.`,
    };
  }
  return node(points.find(ends[0] ?? ref));
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
