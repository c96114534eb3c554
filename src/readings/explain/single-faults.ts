import { addTo } from "../../base/index.ts";
import { type Branch, type Fault, failuresOf } from "../../circuit/index.ts";
import { type Id, type Job, ownerOf, type Part, type PinRef, type Wire } from "../../job/index.ts";
import { pinsOfCavity } from "../cavity-pins.ts";
import { netsByWire } from "../wire-nets.ts";
import type { FaultTrial } from "./trial-fault.ts";

/** Where every loom ends. */
const ENDS = ["chassis", "battery+", "battery-"] as const;

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

/** What may matter to every one of some readings, each in its state: what does not is never tried. */
export interface Screen {
  /** Something in the branch of this name opens or corrodes. */
  opens(branch: string): boolean;
  /** The same for all of some parts and wires at once. */
  opensIn(owners: readonly Id[]): boolean;
  /** The two ends of a branch touch. */
  across(branch: string): boolean;
  /** A relay, a module or a path stays as it is. */
  sticks(by: string): boolean;
  /** Each two of these places that may touch, by their index. */
  touching(places: readonly string[]): readonly (readonly [number, number])[];
}

/** What one fault may be on a machine in a state, as far as `screen` lets it pass; null where there are more than `most`. */
export function singleFaults(
  job: Job,
  parts: ReadonlyMap<Id, Part>,
  wires: readonly Wire[],
  trial: FaultTrial,
  probes: readonly string[],
  screen: Screen,
  most: number,
): readonly SingleFault[] | null {
  const { branches, deciders } = trial.healthy.wiring;
  const inside = branches.flatMap((branch): readonly SingleFault[] => {
    const { owner, element } = branch;
    if (owner === null) return [];
    const name = branchName(branch);
    const open: readonly SingleFault[] = screen.opens(name) ? [{ is: "open", branch: name }] : [];
    if (element === null) return open;
    if (branch.acts.is === "source") return [...open, { is: "weak", branch: name }];
    return screen.across(name) ? [...open, { is: "across", branch: name }] : open;
  });
  const stuck = deciders.flatMap(({ id }): readonly SingleFault[] =>
    screen.sticks(id)
      ? [
          { is: "stuck", by: id, acts: true },
          { is: "stuck", by: id, acts: false },
        ]
      : [],
  );
  const gone = [...parts.keys()].flatMap((part): readonly SingleFault[] =>
    screen.opensIn([part]) ? [{ is: "gone", part }] : [],
  );
  const found = [...inside, ...gone, ...stuck, ...joints(job, parts, wires, probes, screen)];
  const touches = touching(job, wires, trial, probes, screen, most - found.length);
  return touches === null ? null : [...found, ...touches];
}

/** Where wires meet, or a probe may touch beyond the bad joint: all of them part from the pin, or a splice falls apart. */
function joints(
  job: Job,
  parts: ReadonlyMap<Id, Part>,
  wires: readonly Wire[],
  probes: readonly string[],
  screen: Screen,
): readonly SingleFault[] {
  const probed = new Set(probes.flatMap((probe) => [probe, ...pinsOfCavity(job, probe)]));
  const ends = new Map<PinRef, Id[]>();
  for (const { id, from, to } of wires) for (const end of [from, to]) addTo(ends, end, id);
  const found: SingleFault[] = [];
  const apart = new Set<Id>();
  for (const [pin, own] of ends) {
    const part = parts.get(ownerOf(pin));
    if (!part || !(probed.has(pin) || screen.opensIn([...own, part.id]))) continue;
    const falls = failuresOf(part).some((one) => one.mode === "open" && one.in === "every-pin");
    // of one wire that ends there, its own break is the same but for a probe in between
    if (own.length < 2 && !falls && !probed.has(pin)) continue;
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
  screen: Screen,
  most: number,
): readonly SingleFault[] | null {
  const { wiring } = trial.healthy;
  const nets = netsByWire(wiring);
  const named = new Map<number, string>();
  const name = (probe: string) => {
    const at = wiring.probe(probe);
    if (!at.ok) return;
    const net = nets[at.node] as number;
    if (!named.has(net)) named.set(net, probe);
  };
  for (const probe of [...ENDS, ...probes]) name(probe);
  for (const { cavity } of job.links) name(cavity);
  for (const { from, to } of wires) {
    name(from);
    name(to);
  }
  const lines = [...named.values()];
  const pairs = screen.touching(lines);
  return pairs.length > most
    ? null
    : pairs.map(([a, b]) => ({ is: "touch", a: lines[a] as string, b: lines[b] as string }));
}
