import type { Id, Job, PinId, Probe, When } from "../../job/index.ts";
import type { Branch } from "./branch.ts";
import { type Doubts, findDoubts } from "./doubts.ts";
import type { Fault } from "./fault.ts";
import { between, follow, type Settled } from "./follow.ts";
import { influences } from "./influence.ts";
import { type Conditions, FUSE_TIMES } from "./lower.ts";
import { type Side, type Wiring, wire } from "./wiring.ts";

/** Something held between two points of the machine for the moment: a meter, a test lamp, a bridge. */
export interface Between {
  readonly red: Probe;
  readonly black: Probe;
  readonly acts: Branch["acts"];
  /** Where a probe goes at an opened joint; the harness when absent. */
  readonly sides?: { readonly red?: Side; readonly black?: Side };
}

/** What flows through one element of a part. */
export interface ElementFlow {
  readonly part: Id;
  readonly a: PinId;
  readonly b: PinId;
  /** From `a` to `b`. */
  readonly amps: number;
  /** Of `a` over `b`. */
  readonly volts: number;
}

/** A machine in one state, solved. */
export interface Solution {
  /** V(red) − V(black); null where nothing ties the two together, or a probe is on nothing. */
  volts(red: Probe, black: Probe): number | null;
  /** What nobody knows and the voltage between two points depends on, as ends of "depends on ...". */
  dependsOn(red: Probe, black: Probe): readonly string[];
  /** Amps and volts of every element that conducts. */
  readonly flows: readonly ElementFlow[];
  /** Relays by id: true while pulled in. */
  readonly relays: ReadonlyMap<Id, boolean>;
  /** Relays and modules that chatter instead of coming to rest. */
  readonly oscillating: readonly Id[];
  /** Fuses and breakers that carry more than their rating, as drawn. */
  readonly blown: readonly Id[];
  /** Reasons why the state asked for can't be. */
  readonly problems: readonly string[];
}

/** The working parts of a solution, for readings. */
export interface Bench {
  readonly wiring: Wiring;
  readonly settled: Settled;
  /** Everything nobody knows in this state, relays that depend on it included. */
  /** Worked out when first asked for. */
  readonly doubts: Doubts;
}

/** Branches for what is held between probes; those whose probe is on nothing are left out. */
export function heldBetween(wiring: Wiring, extra: readonly Between[]): readonly Branch[] {
  return extra.flatMap(({ red, black, acts, sides }): Branch[] => {
    const a = wiring.probe(red, sides?.red);
    const b = wiring.probe(black, sides?.black);
    if (!a.ok || !b.ok) return [];
    return [{ a: a.node, b: b.node, owner: null, element: null, acts, gate: null, closedIn: null }];
  });
}

/** Puts a machine into a state and lets relays and modules follow. */
export function setUp(
  job: Job,
  machine: Id | null,
  when: When,
  extra: readonly Between[] = [],
  joints: Conditions["joints"] = "ideal",
  faults: readonly Fault[] = [],
): Bench {
  const wiring = wire(job, machine, when, joints, faults);
  const held = heldBetween(wiring, extra);
  const settled = follow(wiring, held);
  let doubts: Doubts | null = null;
  return {
    wiring,
    settled,
    get doubts() {
      doubts ??= findDoubts(wiring, settled, held, fusesAbove(settled, FUSE_TIMES));
      return doubts;
    },
  };
}

export function solveCircuit(
  job: Job,
  machine: Id | null,
  when: When,
  extra: readonly Between[] = [],
  faults: readonly Fault[] = [],
): Solution {
  const bench = setUp(job, machine, when, extra, "ideal", faults);
  const { wiring, settled } = bench;
  const { point, branches, states } = settled;
  return {
    volts(red, black) {
      const a = wiring.probe(red);
      const b = wiring.probe(black);
      return a.ok && b.ok ? between(point, a.node, b.node) : null;
    },
    dependsOn(red, black) {
      const a = wiring.probe(red);
      const b = wiring.probe(black);
      if (!a.ok || !b.ok) return [];
      const { doubts } = bench;
      const found = influences(doubts.point, doubts.unknowns, a.node, b.node);
      return [...new Set(found.map(({ what }) => what))];
    },
    flows: branches.flatMap((branch, index): ElementFlow[] => {
      if (!branch.element || !Number.isFinite(point.ohms[index])) return [];
      const { law } = branch.element;
      // a diode across a coil is not what the coil does
      if (branch.acts.is === "junction" && law.is !== "led" && law.is !== "diode") return [];
      return [
        {
          part: branch.element.part,
          a: branch.element.a,
          b: branch.element.b,
          amps: point.amps[index] as number,
          volts: (point.volts[branch.a] as number) - (point.volts[branch.b] as number),
        },
      ];
    }),
    relays: new Map(
      wiring.deciders.flatMap((decider) =>
        decider.is === "coil" ? [[decider.part, states.get(decider.id) ?? false] as const] : [],
      ),
    ),
    oscillating: [
      ...new Set(
        wiring.deciders.flatMap((one) => (settled.oscillating.includes(one.id) ? [one.part] : [])),
      ),
    ],
    blown: fusesAbove(settled, 1).flatMap(({ owner }) => (owner === null ? [] : [owner])),
    problems: wiring.problems,
  };
}

function fusesAbove({ branches, point }: Settled, times: number): readonly Branch[] {
  return branches.filter((branch, index) => {
    const law = branch.element?.law;
    return law?.is === "protection" && Math.abs(point.amps[index] as number) > law.amps * times;
  });
}
