import {
  type Branch,
  doesWork,
  held,
  nominal,
  type OperatingPoint,
  type Setting,
  settingsOf,
  type Wiring,
  wire,
  wireOhms,
} from "../circuit/index.ts";
import { type CavityRef, type Id, pinRef, type When, type Wire } from "../job/index.ts";
import type { Shared } from "./shared.ts";
import { hasUnsaid, isUnsaid, settingBetween } from "./unsaid-values.ts";

/** Less than a small bulb draws, A: no drop proves anything then. */
const TOO_LITTLE = 0.05;

/** A machine in a state, as the way of a current is followed through it. */
export interface DropState {
  readonly wiring: Wiring;
  readonly point: OperatingPoint;
  /** The same with the largest and the smallest of the loads whose values nobody has said; empty where all are said. */
  readonly others: readonly OperatingPoint[];
  readonly wires: ReadonlyMap<Id, Wire>;
  /** Branches with current, by each node that they end at. */
  readonly at: ReadonlyMap<number, readonly number[]>;
}

/** The machine with real joints, but wires of unknown size or length all but none: they must not move the amps. */
export function stateOf(shared: Shared, when: When): DropState | string {
  const bench = shared.bench(when);
  const [problem] = bench.wiring.problems;
  if (problem !== undefined) return problem;
  return shared.recent(`drops ${JSON.stringify(when)}`, () => {
    const wiring = wire(shared.job, shared.machine, when, "real");
    const wires = new Map([...shared.network.wires]);
    const settingOf = (branch: Branch): Setting => {
      const own = branch.element === null ? wires.get(branch.owner ?? "") : undefined;
      const isUnknown = own !== undefined && wireOhms(own) === null && branch.acts.is === "ohmic";
      const ohms = isUnknown && branch.acts.is === "ohmic" ? branch.acts.low : 0;
      return isUnknown ? { ohms, cold: ohms, volts: 0 } : nominal(branch);
    };
    const solved = (share: number | null) =>
      held(
        wiring,
        bench.settled.states,
        [],
        settingsOf(wiring.branches, (branch) =>
          share !== null && isUnsaid(branch) ? settingBetween(branch, share) : settingOf(branch),
        ),
      );
    const point = solved(null);
    const others = hasUnsaid(wiring.branches) ? [0, 1].map(solved) : [];
    const at = new Map<number, number[]>();
    wiring.branches.forEach(({ a, b }, index) => {
      if (Math.abs(point.amps[index] as number) < TOO_LITTLE / 10) return;
      for (const node of [a, b]) at.set(node, [...(at.get(node) ?? []), index]);
    });
    return { wiring, point, others, wires, at };
  });
}

/** Where the way begins: the nodes before and after a load, or the one that a cavity lies on. */
export function startAt(shared: Shared, { wiring, point, at }: DropState, of: Id | CavityRef) {
  const part = shared.parts.get(of);
  if (part) {
    const [load = -1] = wiring.branches
      .map((_, index) => index)
      .filter((index) => {
        const { owner, element, acts } = wiring.branches[index] as Branch;
        return owner === of && element !== null && acts.is !== "source";
      })
      // of a relay its coil: its contacts carry somebody else's current
      .filter((index, _, own) => isWork(wiring, index) || !own.some((one) => isWork(wiring, one)))
      .sort((a, b) => Math.abs(point.amps[b] ?? 0) - Math.abs(point.amps[a] ?? 0));
    const amps = point.amps[load] ?? 0;
    if (Math.abs(amps) < TOO_LITTLE) return null;
    const { a, b, element } = wiring.branches[load] as Branch;
    const [up, down] = amps > 0 ? [a, b] : [b, a];
    return { load, up, down, amps: Math.abs(amps), ref: pinRef(of, element?.a ?? "") };
  }
  const probed = wiring.probe(of);
  if (!probed.ok) return null;
  const { node } = probed;
  const through = (at.get(node) ?? []).reduce(
    (sum, index) => sum + Math.max(0, into(wiring, point, index, node)),
    0,
  );
  if (through < TOO_LITTLE) return null;
  return { load: null, up: node, down: node, amps: through, ref: of };
}

function isWork({ branches }: Wiring, index: number): boolean {
  const element = branches[index]?.element;
  return element ? doesWork(element.law) : false;
}

/** A that a branch brings into a node. */
function into({ branches }: Wiring, point: OperatingPoint, index: number, node: number): number {
  const amps = point.amps[index] as number;
  return branches[index]?.b === node ? amps : -amps;
}

/** Branches one after another by the largest current, up to a source; nearest the start first. */
export function follow(
  { wiring, point, at }: DropState,
  start: number,
  way: "along" | "against",
): number[] {
  const found: number[] = [];
  const seen = new Set<number>([start]);
  for (let node = start; ; ) {
    const here = node;
    const flow = (index: number) => into(wiring, point, index, here) * (way === "against" ? 1 : -1);
    const [next] = (at.get(here) ?? [])
      .filter((index) => flow(index) > 0)
      .sort((a, b) => flow(b) - flow(a));
    const branch = next === undefined ? undefined : wiring.branches[next];
    if (next === undefined || !branch || branch.acts.is === "source") return found;
    node = branch.a === here ? branch.b : branch.a;
    if (seen.has(node)) return found;
    seen.add(node);
    found.push(next);
  }
}
