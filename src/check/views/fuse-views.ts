import { InStep } from "../../base/index.ts";
import {
  askAgain,
  elementsOf,
  type Kept,
  type LinkedNetwork,
  type Member,
  steadyAmps,
} from "../../circuit/index.ts";
import type { Conductors, Id, Part, Wire } from "../../job/index.ts";
import { type FuseReach, fuseReaches } from "../fuse-reach.ts";
import type { FuseView } from "../rule.ts";
import { isSame, keepList, Last } from "./keep.ts";
import type { Now } from "./now.ts";

/** What is so for the whole job. */
interface Common {
  readonly systemVoltage: number;
  readonly conductors: Conductors | undefined;
}

/** A fuse as it was looked at last, with all that its views were made of. */
interface Known {
  readonly member: Member;
  readonly part: Part;
  readonly common: Common;
  readonly reaches: Kept<readonly FuseReach[]>;
  readonly made: readonly Made[];
  readonly views: readonly FuseView[];
}

interface Made {
  /** As they lie in the reach: its wires, and the parts of its fuses and loads. */
  readonly wires: readonly (Wire | undefined)[];
  readonly ids: readonly Id[];
  readonly parts: readonly (Part | undefined)[];
}

/** Looks at each fuse and breaker of a known size, and at the circuit that it protects. */
export class FuseViews {
  private readonly last = new Last<readonly FuseView[]>();
  private readonly common = new Last<Common>();
  /** In the order of the drawing. */
  private known: readonly Known[] = [];

  of({ job, circuit: { parts, wires }, network }: Now): readonly FuseView[] {
    const { systemVoltage, conductors } = job;
    const inputs = [parts, wires, network.revision, systemVoltage, conductors];
    return this.last.of(inputs, (before) => {
      const common = this.common.of([systemVoltage, conductors], () => ({
        systemVoltage,
        conductors,
      }));
      const old = new InStep(this.known, ({ member }) => member);
      const now: Known[] = [];
      const views: FuseView[] = [];
      for (const member of network.roster.protections) {
        const one = take(network, member, common, old.find(member));
        now.push(one);
        for (const view of one.views) views.push(view);
      }
      this.known = now;
      return keepList(before, views);
    });
  }
}

function take(
  network: LinkedNetwork,
  member: Member,
  common: Common,
  known: Known | undefined,
): Known {
  const { part } = member;
  const isSized = (part.kind === "fuse" || part.kind === "breaker") && part.amps !== undefined;
  const reaches = askAgain(network, known?.reaches, (sight) => {
    const way = sight.element(member, 0);
    return way ? fuseReaches(sight, way) : [];
  });
  if (known?.part === part && known.common === common && known.reaches === reaches) {
    if (known.made.every((made, index) => isAsMade(network, reaches.value[index], made)))
      return known;
  }
  if (!isSized) return { member, part, common, reaches, made: [], views: [] };
  const made = reaches.value.map((reach) => make(network, reach));
  const views = reaches.value.map((reach, index) => {
    const view = viewOf(network, reach, { part, amps: part.amps ?? 0, ...common });
    const was = known?.views[index];
    return was && isSame(was, view) ? was : view;
  });
  return { member, part, common, reaches, made, views };
}

const partOf = (network: LinkedNetwork, id: Id): Part | undefined => network.members.get(id)?.part;

function make(network: LinkedNetwork, { before, wires, together }: FuseReach): Made {
  const ids = [...before, ...together.flatMap((group) => group.map(({ part }) => part))];
  return {
    wires: wires.map((number) => network.wireOf[number]),
    ids,
    parts: ids.map((id) => partOf(network, id)),
  };
}

const isAsMade = (network: LinkedNetwork, reach: FuseReach | undefined, made: Made): boolean =>
  (reach?.wires ?? []).every((number, place) => network.wireOf[number] === made.wires[place]) &&
  made.ids.every((id, place) => partOf(network, id) === made.parts[place]);

interface Fuse extends Common {
  readonly part: Part;
  readonly amps: number;
}

function viewOf(
  network: LinkedNetwork,
  { before, wires, together }: FuseReach,
  fuse: Fuse,
): FuseView {
  const sized = wires.flatMap((number): Wire[] => {
    const wire = network.wireOf[number];
    return wire && (wire.mm2 !== undefined || wire.awg !== undefined) ? [wire] : [];
  });
  let heaviest: { loads: Part[]; drawn: number } = { loads: [], drawn: 0 };
  for (const group of together) {
    const loads: Part[] = [];
    let drawn = 0;
    for (const { part: id, a, b } of group) {
      const part = partOf(network, id);
      const element =
        part && elementsOf(part, fuse.systemVoltage).find((one) => one.a === a && one.b === b);
      const amps = element ? steadyAmps(element.law, fuse.systemVoltage) : null;
      if (!part || amps === null) continue;
      if (!loads.includes(part)) loads.push(part);
      drawn += amps;
    }
    if (drawn > heaviest.drawn) heaviest = { loads, drawn };
  }
  return {
    ...fuse,
    before: before.flatMap((id) => partOf(network, id) ?? []),
    wires: sized,
    ...heaviest,
  };
}
