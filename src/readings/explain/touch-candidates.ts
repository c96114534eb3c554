import { pinsOf } from "../../circuit/index.ts";
import { cavityRef, type Id, type PinRef, type Probe, pinRef, type Wire } from "../../job/index.ts";
import type { ReadingSetup } from "../prediction.ts";
import type { Shared } from "../shared.ts";
import { netsByWire } from "../wire-nets.ts";
import { type Candidate, likelihoodOf, type Touches, touch } from "./candidate.ts";
import type { FaultTrial } from "./trial-fault.ts";
import { pinAt } from "./way-chains.ts";

/** Lines that touch ground or a feed. */
export function touching(
  { red, black }: ReadingSetup,
  { healthy: { wiring }, placed, seen, sound }: FaultTrial,
  wires: ReadonlyMap<Id, Wire>,
  touches: Touches,
): readonly Candidate[] {
  const nets = netsByWire(wiring);
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
    const best = new Map<number, { at: number; felt: number; name: PinRef | Probe }>();
    const look = (at: number, name: () => PinRef | Probe | null) => {
      if (!touches(at, node)) return;
      const felt = seen ? Math.abs((seen[at] as number) - (seen[node] as number)) : 0;
      const net = nets[at] as number;
      const known = best.get(net);
      if (known && felt <= known.felt) return;
      const named = name();
      if (named !== null) best.set(net, { at, felt, name: named });
    };
    look(placed.red, () => red);
    look(placed.black, () => black);
    for (const branch of wiring.branches)
      for (const at of [branch.a, branch.b]) look(at, () => pinAt(branch, at, wires));
    return [...best.values()].map(
      ({ at, name }): Candidate => ({
        mode,
        partly: "leaky",
        members: [],
        between: [name, name],
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

/** Terminals that touch one beside them, in a plug or on a part, and the two probed lines. */
export function neighbours(
  { job, parts }: Shared,
  { red, black }: ReadingSetup,
  { healthy: { wiring } }: FaultTrial,
  touches: Touches,
): readonly Candidate[] {
  const nets = netsByWire(wiring);
  const found = new Map<string, Candidate>();
  const nodeOf = new Map<Probe, number | null>();
  const nodeAt = (at: Probe): number | null => {
    const known = nodeOf.get(at);
    if (known !== undefined) return known;
    const probed = wiring.probe(at);
    nodeOf.set(at, probed.ok ? probed.node : null);
    return probed.ok ? probed.node : null;
  };
  const bridge = (at: Probe, to: Probe) => {
    const [node, far] = [nodeAt(at), nodeAt(to)];
    if (node === null || far === null || !touches(node, far)) return;
    const lines = [nets[node], nets[far]].sort().join();
    if (found.has(lines)) return;
    found.set(lines, {
      mode: "bridged",
      partly: "leaky",
      members: [],
      between: [at, at],
      to,
      by: null,
      law: null,
      ...touch(node, far),
      likelihood: likelihoodOf([null], "bridged"),
    });
  };
  bridge(red, black);
  const isProbed = (at: Probe) => at === red || at === black;
  for (const { id, cavities } of job.plugs) {
    const all = cavities.map(({ mark }) => cavityRef(id, mark));
    // named from where the meter stands
    const list = [...all.filter(isProbed), ...all.filter((one) => !isProbed(one))];
    list.forEach((one, index) => {
      for (const other of list.slice(index + 1)) bridge(one, other);
    });
  }
  for (const part of parts.values()) {
    const pins = pinsOf(part).map(({ id }) => pinRef(part.id, id));
    pins.slice(1).forEach((pin, index) => {
      bridge(pins[index] as PinRef, pin);
    });
  }
  return [...found.values()];
}
