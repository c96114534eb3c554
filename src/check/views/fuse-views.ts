import {
  askAgain,
  elementsOf,
  type Kept,
  type LinkedNetwork,
  type Member,
  steadyAmps,
  stillHolds,
} from "../../circuit/index.ts";
import type { Conductors, Id, Part, Wire } from "../../job/index.ts";
import { type FuseReach, fuseReaches } from "../fuse-reach.ts";
import type { FuseView } from "../rule.ts";
import { isSame, keepFlat, keepInStep, Last } from "./keep.ts";
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
      const { protections } = network.roster;
      this.known = keepInStep(this.known, protections, memberOf, (member, known) =>
        known && holds(network, known, common) ? known : take(network, member, common, known),
      );
      return keepFlat(before, this.known, viewsOf);
    });
  }
}

const memberOf = ({ member }: Known) => member;
const viewsOf = ({ views }: Known) => views;

function holds(network: LinkedNetwork, known: Known, common: Common): boolean {
  const { member, part, reaches, made } = known;
  if (member.part !== part || known.common !== common || !stillHolds(network, reaches))
    return false;
  for (let at = 0; at < made.length; at++)
    if (!isAsMade(network, reaches.value[at], made[at] as Made)) return false;
  return true;
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

function isAsMade(network: LinkedNetwork, reach: FuseReach | undefined, made: Made): boolean {
  for (let at = 0; at < made.wires.length; at++)
    if (network.wireOf[reach?.wires[at] ?? -1] !== made.wires[at]) return false;
  for (let at = 0; at < made.ids.length; at++)
    if (partOf(network, made.ids[at] as Id) !== made.parts[at]) return false;
  return true;
}

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
