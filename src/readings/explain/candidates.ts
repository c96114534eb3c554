import { addTo } from "../../base/index.ts";
import { type Branch, circuitOf, failuresOf, transfer } from "../../circuit/index.ts";
import { type Id, ownerOf, type Part, type PinRef, type Wire } from "../../job/index.ts";
import { pinsOfCavity } from "../cavity-pins.ts";
import type { ReadingSetup } from "../prediction.ts";
import type { Shared } from "../shared.ts";
import { type Candidate, likelihoodOf, NO_TOUCH, type Touches, touch } from "./candidate.ts";
import type { Feels } from "./feels.ts";
import { jointHarm } from "./joint-harm.ts";
import { neighbours, touching } from "./touch-candidates.ts";
import type { FaultTrial } from "./trial-fault.ts";
import { type Chain, chainsOnTheWay } from "./way-chains.ts";

/** Share of an ampere pushed in at a coil that a branch on its way takes at least. */
const ON_COIL_WAY = 0.01;

/**
 * Every single fault that is modelled and that the reading may feel, the likeliest first. `feels`:
 * null where any fault may matter.
 */
export function candidatesFor(
  shared: Shared,
  setup: ReadingSetup,
  trial: FaultTrial,
  feels: Feels | null,
): readonly Candidate[] {
  const { wires } = circuitOf(shared.job, shared.machine);
  const byId = new Map(wires.map((wire) => [wire.id, wire]));
  const { red, black } = trial.placed;
  const opens = (all: readonly Branch[]) => feels === null || feels.opens(all);
  const isOnWay = (branch: Branch) => opens([branch]);
  const chains = chainsOnTheWay(trial, isOnWay, [red, black], byId);
  // what blows a fuse that matters does as much as the fuse
  const blowing = feels?.blowing(feels.fuses) ?? [];
  const touches: Touches = (a, b) =>
    a !== b &&
    (feels === null || feels.likelyTouches(a, b) || blowing.some((one) => one.likelyTouches(a, b)));
  const { branches } = trial.healthy.wiring;
  const found = [
    ...chains.map((chain) => opened(chain, setup, trial, null)),
    ...branches.flatMap((branch) => insideOf(branch, isOnWay, touches)),
    ...joints(shared, setup, trial, wires, opens),
    ...contacts(trial, byId, feels, touches),
    ...touching(setup, trial, byId, touches),
    ...neighbours(shared, setup, trial, touches),
  ];
  return found.sort((a, b) => b.likelihood - a.likelihood);
}

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

/** Where several wires meet and part, or lose the frame, all at once. */
function joints(
  { job, parts }: Shared,
  { red, black }: Pick<ReadingSetup, "red" | "black">,
  { healthy: { wiring } }: FaultTrial,
  wires: readonly Wire[],
  opens: (branches: readonly Branch[]) => boolean,
): readonly Candidate[] {
  const ways = new Map<Id, Branch>();
  for (const branch of wiring.branches)
    if (branch.owner !== null && branch.element === null) ways.set(branch.owner, branch);
  const meeting = new Map<PinRef, Wire[]>();
  for (const wire of wires) {
    for (const end of [wire.from, wire.to])
      if (fallsApart(parts.get(ownerOf(end)))) addTo(meeting, end, wire);
  }
  // at a probed joint it matters which side of it the probe lies on
  const probed = new Set([red, black].flatMap((one) => [one, ...pinsOfCavity(job, one)]));
  const met = new Set<Id>();
  for (const [pin, all] of meeting) {
    if (all.length < 2) continue;
    const isFelt = probed.has(pin) || opens(all.flatMap(({ id }) => ways.get(id) ?? []));
    if (isFelt) met.add(ownerOf(pin));
  }
  return [...met].map((id) => ({
    mode: "open",
    partly: "high-resistance",
    members: [id],
    between: null,
    to: null,
    by: null,
    law: null,
    harm: jointHarm(wiring, parts, meeting, probed, id)?.full ?? {
      opens: [],
      adds: [],
      parts: { part: id, mode: "open" },
    },
    ...NO_TOUCH,
    likelihood: likelihoodOf([null], "open"),
  }));
}

const fallsApart = (part: Part | undefined): boolean =>
  part !== undefined &&
  failuresOf(part).some((one) => one.mode === "open" && one.in === "every-pin");

/** What fails otherwise than by opening. */
function insideOf(
  branch: Branch,
  isOnWay: (branch: Branch) => boolean,
  touches: Touches,
): readonly Candidate[] {
  const { element, owner, acts, a, b } = branch;
  if (!element || owner === null) return [];
  const law = element.law.is;
  const base = { members: [owner], between: null, to: null, by: null, law };
  if (acts.is === "source") {
    if (!isOnWay(branch)) return [];
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
  if (!canShort || !touches(a, b)) return [];
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

/** Contacts that stand as they shouldn't, and what makes a relay stand so. */
function contacts(
  trial: FaultTrial,
  wires: ReadonlyMap<Id, Wire>,
  feels: Feels | null,
  touches: Touches,
): readonly Candidate[] {
  const { healthy, sound } = trial;
  const { wiring } = healthy;
  const near = wiring.branches.flatMap((branch, index) => {
    const { a, b, gate, closedIn } = branch;
    if (gate === null && closedIn === null) return [];
    const isClosed = Number.isFinite(sound.point.ohms[index] as number);
    const isFelt =
      feels === null ||
      (gate !== null
        ? feels.deciders.has(gate.by)
        : isClosed
          ? feels.opens([branch])
          : touches(a, b));
    return isFelt ? [{ branch, isClosed }] : [];
  });
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
  const isOnWay = (branch: Branch, ohms: number) =>
    Math.abs((seen[branch.a] as number) - (seen[branch.b] as number)) / ohms >= ON_COIL_WAY;
  const chains = chainsOnTheWay(trial, isOnWay, [a, b], wires);
  return chains.map((chain) => ({
    ...opened(chain, { red: "", black: "" }, trial, part),
    ...(chain.branches.some(isCoil)
      ? { harm: { opens: chain.branches.filter(isCoil), adds: [] } }
      : {}),
  }));
}
