import { type Branch, type Fault, failuresOf } from "../../circuit/index.ts";
import { type Id, type Job, ownerOf, type Part, type PinRef, type Wire } from "../../job/index.ts";
import { pinsOfCavity } from "../cavity-pins.ts";
import { netsByWire } from "../wire-nets.ts";
import { feltTouches } from "./felt-touches.ts";
import type { FaultTrial } from "./trial-fault.ts";

/** Where every loom ends. */
const ENDS = ["chassis", "battery+", "battery-"] as const;

/** Lines of which each two are tried, at most. */
const MOST_LINES = 1000;

/** A fault told by names, so that it can be put to every state of the machine. */
export type SingleFault =
  | { readonly is: "open"; readonly branch: string }
  | { readonly is: "across"; readonly branch: string }
  | { readonly is: "weak"; readonly branch: string }
  | { readonly is: "stuck"; readonly by: string; readonly acts: boolean }
  /** Nothing in the part conducts any more. */
  | { readonly is: "gone"; readonly part: Id }
  | { readonly is: "joint"; readonly fault: Fault }
  | { readonly is: "touch"; readonly a: string; readonly b: string };

/** A branch's name in every state of the machine. */
export const branchName = ({ owner, element, acts, gate }: Branch): string =>
  JSON.stringify([owner, element?.a, element?.b, element?.law.is, acts.is, gate?.by, gate?.on]);

/** What one fault may be on a machine in a state; null where there are more than `most`. */
export function singleFaults(
  job: Job,
  parts: ReadonlyMap<Id, Part>,
  wires: readonly Wire[],
  trial: FaultTrial,
  probes: readonly string[],
  most: number,
): readonly SingleFault[] | null {
  const { branches, deciders } = trial.healthy.wiring;
  const inside = branches.flatMap((branch): readonly SingleFault[] => {
    if (branch.owner === null) return [];
    const name = branchName(branch);
    if (branch.element === null) return [{ is: "open", branch: name }];
    if (branch.acts.is === "source")
      return [
        { is: "open", branch: name },
        { is: "weak", branch: name },
      ];
    return [
      { is: "open", branch: name },
      { is: "across", branch: name },
    ];
  });
  const stuck = deciders.flatMap(({ id }): readonly SingleFault[] => [
    { is: "stuck", by: id, acts: true },
    { is: "stuck", by: id, acts: false },
  ]);
  const gone = [...parts.keys()].map((part): SingleFault => ({ is: "gone", part }));
  const found = [...inside, ...gone, ...stuck, ...joints(job, parts, wires, probes)];
  const touches = touching(job, wires, trial, probes, most - found.length);
  return touches === null ? null : [...found, ...touches];
}

/** Where wires meet, or a probe may touch beyond the bad joint: all of them part from the pin, or a splice falls apart. */
function joints(
  job: Job,
  parts: ReadonlyMap<Id, Part>,
  wires: readonly Wire[],
  probes: readonly string[],
): readonly SingleFault[] {
  const probed = new Set(probes.flatMap((probe) => [probe, ...pinsOfCavity(job, probe)]));
  const counts = new Map<PinRef, number>();
  for (const { from, to } of wires)
    for (const end of [from, to]) counts.set(end, (counts.get(end) ?? 0) + 1);
  const found: SingleFault[] = [];
  const apart = new Set<Id>();
  for (const [pin, count] of counts) {
    const part = parts.get(ownerOf(pin));
    if (!part) continue;
    const falls = failuresOf(part).some((one) => one.mode === "open" && one.in === "every-pin");
    // of one wire that ends there, its own break is the same but for a probe in between
    if (count < 2 && !falls && !probed.has(pin)) continue;
    found.push({ is: "joint", fault: { part: pin, mode: "open" } });
    if (falls && !apart.has(part.id)) {
      apart.add(part.id);
      found.push({ is: "joint", fault: { part: part.id, mode: "open" } });
    }
  }
  return found;
}

/** Any two lines that touch, posts of the battery and the frame among them, where the probes may feel it. */
function touching(
  job: Job,
  wires: readonly Wire[],
  trial: FaultTrial,
  probes: readonly string[],
  most: number,
): readonly SingleFault[] | null {
  const { wiring } = trial.healthy;
  const nets = netsByWire(wiring);
  const named = new Map<number, { readonly node: number; readonly probe: string }>();
  const name = (probe: string) => {
    const at = wiring.probe(probe);
    if (!at.ok) return;
    const net = nets[at.node] as number;
    if (!named.has(net)) named.set(net, { node: at.node, probe });
  };
  for (const probe of [...ENDS, ...probes]) name(probe);
  for (const { cavity } of job.links) name(cavity);
  for (const { from, to } of wires) {
    name(from);
    name(to);
  }
  const lines = [...named.values()];
  if (lines.length > MOST_LINES) return null;
  const isFelt = feltTouches(trial);
  const found: SingleFault[] = [];
  for (const [at, a] of lines.entries()) {
    for (const b of lines.slice(at + 1)) {
      if (!isFelt(a.node, b.node)) continue;
      if (found.length >= most) return null;
      found.push({ is: "touch", a: a.probe, b: b.probe });
    }
  }
  return found;
}
