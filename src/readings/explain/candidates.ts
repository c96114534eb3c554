import {
  type Branch,
  circuitOf,
  type FaultMode,
  failuresOf,
  type Law,
  SHORT_OHMS,
  transfer,
} from "../../circuit/index.ts";
import {
  cavityRef,
  type Id,
  ownerOf,
  type PinRef,
  type Probe,
  type Wire,
} from "../../job/index.ts";
import type { ReadingSetup } from "../prediction.ts";
import type { Shared } from "../shared.ts";
import { netsByWire } from "../wire-nets.ts";
import { WEIGHT_OF_MODE, weightOf } from "./priors.ts";
import type { FaultTrial, Harm } from "./trial-fault.ts";
import { type Chain, chainsOnTheWay, pinAt } from "./way-chains.ts";

/** A fault worth trying for one reading. */
export interface Candidate {
  readonly mode: FaultMode;
  /** Its name while it is partial: a bad joint for an open, a leak for a short. Null where it is all or nothing. */
  readonly partly: FaultMode | null;
  readonly members: readonly Id[];
  readonly between: readonly [PinRef | Probe, PinRef | Probe] | null;
  readonly to: PinRef | Probe | null;
  /** The relay that it works by, where it is not on the way itself. */
  readonly by: Id | null;
  readonly law: Law["is"] | null;
  readonly harm: Harm;
  /** The same with these ohms where it touches; null where it is no touching. */
  readonly through: ((ohms: number) => Harm) | null;
  /** What the meter would show if the touched line took on the volts of what it touches; null where that says nothing. */
  readonly pinned: number | null;
  readonly likelihood: number;
}

/** Share of what the probes see that a touched point must move to be worth trying. */
const FELT = 0.01;
/** Contacts, and cavities beside a probed one, that are tried at most. */
const MOST_CONTACTS = 24;
const MOST_NEIGHBOURS = 16;
/** Grounds, splices and plugs in the loom that are tried at most: each takes a machine put together anew. */
const MOST_JOINTS = 3;

/** Faults on the way of a reading and beside it, the likeliest first. */
export function candidatesFor(
  shared: Shared,
  setup: ReadingSetup,
  trial: FaultTrial,
): readonly Candidate[] {
  const { wires } = circuitOf(shared.job, shared.machine);
  const byId = new Map(wires.map((wire) => [wire.id, wire]));
  const { red, black } = trial.placed;
  const { seen } = trial;
  const chains = seen ? chainsOnTheWay(trial, seen, [red, black], byId) : [];
  const found = [
    ...chains.map((chain) => opened(chain, setup, trial, null)),
    ...chains.flatMap(({ branches }) => branches.flatMap((branch) => insideOf(branch))),
    ...joints(shared, chains, byId, wires),
    ...contacts(trial, byId),
    ...touching(setup, trial, chains, byId),
    ...neighbours(shared, setup, trial),
  ];
  return found.sort((a, b) => b.likelihood - a.likelihood);
}

const joined = (a: number, b: number, ohms = SHORT_OHMS): Branch => ({
  a,
  b,
  owner: null,
  element: null,
  acts: { is: "ohmic", ohms, low: ohms, high: ohms },
  gate: null,
  closedIn: null,
});

/** Two points that touch, as far as a candidate goes by that. */
const touch = (a: number, b: number) => ({
  harm: { opens: [], adds: [joined(a, b)] },
  through: (ohms: number): Harm => ({ opens: [], adds: [joined(a, b, ohms)] }),
  pinned: null,
});

const NO_TOUCH = { through: null, pinned: null } as const;

/** Weight of several things that may each have failed so. */
const likelihoodOf = (laws: readonly (Law["is"] | null)[], mode: FaultMode): number =>
  Math.max(...laws.map(weightOf)) * WEIGHT_OF_MODE[mode] * (1 + 0.1 * (laws.length - 1));

function opened(
  { branches, ends, nodes }: Chain,
  { red, black }: Pick<ReadingSetup, "red" | "black">,
  { placed }: Pick<FaultTrial, "placed">,
  by: Id | null,
): Candidate {
  const laws = branches.map(({ element }) => element?.law.is ?? null);
  const nameOf = (node: number, pin: PinRef) =>
    by !== null ? pin : node === placed.red ? red : node === placed.black ? black : pin;
  return {
    mode: "open",
    partly: "high-resistance",
    members: branches.flatMap(({ owner }) => owner ?? []),
    between: [nameOf(nodes[0], ends[0]), nameOf(nodes[1], ends[1])],
    to: null,
    by,
    law: laws.length === 1 ? (laws[0] ?? null) : null,
    harm: { opens: branches.slice(0, 1), adds: [] },
    ...NO_TOUCH,
    likelihood: likelihoodOf(laws, "open"),
  };
}

/** Where several wires meet on the way and part, or lose the frame, all at once. */
function joints(
  { parts }: Shared,
  chains: readonly Chain[],
  byId: ReadonlyMap<Id, Wire>,
  wires: readonly Wire[],
): readonly Candidate[] {
  const counts = new Map<Id, number>();
  for (const { from, to } of wires)
    for (const end of [from, to]) counts.set(ownerOf(end), (counts.get(ownerOf(end)) ?? 0) + 1);
  const met = new Set<Id>();
  for (const { branches } of chains) {
    for (const { owner } of branches) {
      const wire = owner === null ? undefined : byId.get(owner);
      for (const end of wire ? [wire.from, wire.to] : []) met.add(ownerOf(end));
    }
  }
  const isJoint = (id: Id) => {
    const part = parts.get(id);
    return (
      part !== undefined &&
      (counts.get(id) ?? 0) > 1 &&
      failuresOf(part).some((one) => one.mode === "open" && one.in === "every-pin")
    );
  };
  return [...met]
    .filter(isJoint)
    .slice(0, MOST_JOINTS)
    .map((id) => ({
      mode: "open",
      partly: "high-resistance",
      members: [id],
      between: null,
      to: null,
      by: null,
      law: null,
      harm: { opens: [], adds: [], parts: { part: id, mode: "open" } },
      ...NO_TOUCH,
      likelihood: likelihoodOf([null], "open"),
    }));
}

/** What lies on the way and fails otherwise than by opening. */
function insideOf(branch: Branch): readonly Candidate[] {
  const { element, owner, acts, a, b } = branch;
  if (!element || owner === null) return [];
  const law = element.law.is;
  const base = { members: [owner], between: null, to: null, by: null, law };
  if (acts.is === "source") {
    const { volts } = acts;
    const weak: Branch = { ...branch, acts: { ...acts, volts: volts / 2 } };
    return [
      {
        ...base,
        mode: "high-resistance",
        partly: "high-resistance",
        harm: { opens: [branch], adds: [weak] },
        ...NO_TOUCH,
        likelihood: likelihoodOf([law], "high-resistance"),
      },
    ];
  }
  const canShort = ["load", "coil", "resistor", "sender", "wiper", "diode", "led"].includes(law);
  if (!canShort) return [];
  return [
    {
      ...base,
      mode: "shorted",
      partly: "shorted",
      ...touch(a, b),
      likelihood: likelihoodOf([law], "shorted"),
    },
  ];
}

/** Contacts near the way that stand as they shouldn't, and what makes a relay stand so. */
function contacts(trial: FaultTrial, wires: ReadonlyMap<Id, Wire>): readonly Candidate[] {
  const { healthy, sound, seen, placed } = trial;
  const { wiring } = healthy;
  const { piece } = sound.point.factored;
  const found: { felt: number; branch: Branch; isClosed: boolean }[] = [];
  const all = seen ? Math.abs((seen[placed.red] as number) - (seen[placed.black] as number)) : 0;
  wiring.branches.forEach((branch, index) => {
    const { a, b, gate, closedIn } = branch;
    if (gate === null && closedIn === null) return;
    const isClosed = Number.isFinite(sound.point.ohms[index] as number);
    const ties = [a, b].some((node) => piece[node] === piece[placed.red]);
    const felt = seen
      ? Math.abs((seen[a] as number) - (seen[b] as number)) /
        (isClosed ? (sound.point.ohms[index] as number) : all)
      : ties
        ? 1
        : 0;
    if (felt >= FELT) found.push({ felt, branch, isClosed });
  });
  const near = found.sort((a, b) => b.felt - a.felt).slice(0, MOST_CONTACTS);
  const relays = new Set<string>();
  return near.flatMap(({ branch, isClosed }): readonly Candidate[] => {
    const { owner, element, gate, a, b } = branch;
    if (owner === null) return [];
    const law = element?.law.is ?? null;
    const base = { partly: null, members: [owner], between: null, to: null, by: null, law };
    if (gate === null) {
      const mode = isClosed ? "stuck-open" : "stuck-closed";
      return [
        {
          ...base,
          partly: isClosed ? "high-resistance" : "leaky",
          mode,
          ...(isClosed ? { harm: { opens: [branch], adds: [] }, ...NO_TOUCH } : touch(a, b)),
          likelihood: likelihoodOf([law], mode),
        },
      ];
    }
    if (relays.has(gate.by)) return [];
    relays.add(gate.by);
    const acts = sound.states.get(gate.by) ?? false;
    const mode = acts ? "stuck-open" : "stuck-closed";
    const stuck: Candidate = {
      ...base,
      mode,
      harm: { opens: [], adds: [], holds: new Map([[gate.by, !acts]]) },
      ...NO_TOUCH,
      likelihood: likelihoodOf([law], mode),
    };
    return [stuck, ...(acts ? coilWay(trial, gate.by, wires) : [])];
  });
}

/** What opens the circuit of a coil that is pulled in. */
function coilWay(
  trial: FaultTrial,
  by: string,
  wires: ReadonlyMap<Id, Wire>,
): readonly Candidate[] {
  const decider = trial.healthy.wiring.deciders.find(({ id }) => id === by);
  if (decider?.is !== "coil") return [];
  const { a, b, part } = decider;
  const seen = transfer(trial.sound.point, a, b);
  if (!seen) return [];
  const isCoil = ({ owner, element }: Branch) => owner === part && element?.law.is === "coil";
  const chains = chainsOnTheWay(trial, seen, [a, b], wires);
  return chains.map((chain) => ({
    ...opened(chain, { red: "", black: "" }, trial, part),
    ...(chain.branches.some(isCoil)
      ? { harm: { opens: chain.branches.filter(isCoil), adds: [] } }
      : {}),
  }));
}

/** Lines on the way that touch ground or a feed. */
function touching(
  { red, black }: ReadingSetup,
  { healthy: { wiring }, placed, seen, sound }: FaultTrial,
  chains: readonly Chain[],
  wires: ReadonlyMap<Id, Wire>,
): readonly Candidate[] {
  if (!seen) return [];
  const nets = netsByWire(wiring);
  const named = new Map<number, PinRef | Probe>();
  for (const { branches } of chains) {
    for (const branch of branches) {
      for (const node of [branch.a, branch.b]) {
        const pin = pinAt(branch, node, wires);
        if (pin !== null && !named.has(node)) named.set(node, pin);
      }
    }
  }
  named.set(placed.black, black);
  named.set(placed.red, red);
  const all = Math.abs((seen[placed.red] as number) - (seen[placed.black] as number));
  const battery = wiring.branches.find(
    ({ element }) => element?.law.is === "source" && element.law.live === "always",
  );
  const chassis = wiring.probe("chassis");
  const targets = [
    ...(chassis.ok ? [{ node: chassis.node, mode: "grounded" as const }] : []),
    ...(battery ? [{ node: battery.a, mode: "shorted-to-supply" as const }] : []),
  ];
  return targets.flatMap(({ node, mode }) => {
    // one point of each net of wires: where it tells most
    const best = new Map<number, { at: number; felt: number }>();
    for (const at of named.keys()) {
      const felt = Math.abs((seen[at] as number) - (seen[node] as number));
      const net = nets[at] as number;
      if (felt < FELT * all || felt <= (best.get(net)?.felt ?? 0)) continue;
      best.set(net, { at, felt });
    }
    return [...best.values()].map(
      ({ at }): Candidate => ({
        mode,
        partly: "leaky",
        members: [],
        between: [named.get(at) as string, named.get(at) as string],
        to: mode === "grounded" ? "chassis" : "battery+",
        by: null,
        law: null,
        ...touch(at, node),
        pinned: pinnedTo(sound.point.volts, placed, at, node),
        likelihood: likelihoodOf([null], mode),
      }),
    );
  });
}

/** Volts of one probed node over the other, the touched one lying at its target: a wire to it may hold it down. */
function pinnedTo(
  volts: Float64Array,
  { red, black }: FaultTrial["placed"],
  at: number,
  target: number,
): number | null {
  const of = (node: number) => volts[node === at ? target : node] as number;
  return at === red || at === black ? of(red) - of(black) : null;
}

/** A probed cavity that touches one beside it in its plug, or the other probe's line. */
function neighbours(
  { job }: Shared,
  { red, black }: ReadingSetup,
  { healthy: { wiring }, placed }: FaultTrial,
): readonly Candidate[] {
  const bridge = (at: Probe, node: number, to: Probe, far: number): readonly Candidate[] =>
    node === far
      ? []
      : [
          {
            mode: "bridged",
            partly: "leaky",
            members: [],
            between: [at, at],
            to,
            by: null,
            law: null,
            ...touch(node, far),
            likelihood: likelihoodOf([null], "bridged"),
          },
        ];
  const beside = (at: Probe, node: number) => {
    const plug = job.plugs.find(({ id }) => id === ownerOf(at));
    const others = (plug?.cavities ?? []).map(({ mark }) => cavityRef(plug?.id ?? "", mark));
    return others
      .filter((one) => one !== at)
      .slice(0, MOST_NEIGHBOURS)
      .flatMap((one) => {
        const probed = wiring.probe(one);
        return probed.ok ? bridge(at, node, one, probed.node) : [];
      });
  };
  return [
    ...beside(red, placed.red),
    ...beside(black, placed.black),
    ...bridge(red, placed.red, black, placed.black),
  ];
}
