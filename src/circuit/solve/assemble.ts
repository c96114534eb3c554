import {
  type Id,
  type Job,
  ownerOf,
  type Part,
  type PinId,
  type PinRef,
  pinRef,
  type When,
  type Wire,
} from "../../job/index.ts";
import type { Element } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import { CHASSIS_PLACE, chassisPlace } from "../places.ts";
import type { Acts, Branch, Decider, Draw, Unknown } from "./branch.ts";
import type { CavityPins } from "./cavity-pins.ts";
import { type Drawn, drawnOf } from "./drawn.ts";
import { blowsOf, type Fault, type JointBlow } from "./fault.ts";
import { bridge, seriesOhms } from "./fault-branches.ts";
import { laidIn } from "./laid-part.ts";
import type { Conditions } from "./lower.ts";
import { placePages } from "./pages.ts";
import { placeBranch } from "./placing.ts";
import { Points } from "./points.ts";
import { INSIDE } from "./strike.ts";
import { unknownWireOhms, wireOhms } from "./wire-ohms.ts";

/** What a machine is put together under, positions of switches apart: those change no wire. */
export interface Frame {
  readonly engine: NonNullable<When["engine"]>;
  /** Ids of parts and plugs; `unplugged` and `removed` do the same. */
  readonly out: readonly Id[];
  /** How joints count: see `Conditions`. */
  readonly joints: Conditions["joints"];
  readonly faults: readonly Fault[];
}

/** A machine's circuit with its nodes numbered, whatever its switches do. */
export interface Assembly {
  readonly drawn: Drawn;
  readonly frame: Frame;
  readonly conditions: Conditions;
  readonly circuit: Circuit;
  readonly parts: ReadonlyMap<Id, Part>;
  readonly cavities: CavityPins;
  /** The node of a named point: a pin, `own ` and a pin parted from its wires, `chassis`; null for none. */
  nodeAt(point: string): number | null;
  readonly nodeCount: number;
  /** Of each part, by its place in the circuit: where its branches, unknowns and draws begin in the lists. */
  readonly firstOf: readonly PartFirsts[];
  /** Contacts of switches that stand open are among them: see `Branch.closedIn`. */
  readonly branches: readonly Branch[];
  readonly deciders: readonly Decider[];
  readonly unknowns: readonly Unknown[];
  /** What parts draw that nobody has said: they hang on no reading but of amps, and of small drops. */
  readonly draws: readonly Draw[];
  /** Nodes to count voltages from, the best first. */
  readonly grounds: readonly number[];
  readonly systemVoltage: number;
  /** Batteries in the order of the diagram. */
  readonly batteries: readonly Part[];
  /** Pins parted from the harness. */
  readonly open: ReadonlySet<PinRef>;
  /** Parts that are nothing but a place where wires meet. */
  readonly joints: ReadonlySet<Id>;
  /** Wires that end at a pin of one of those. */
  readonly endsAt: ReadonlyMap<PinRef, readonly string[]>;
}

/** Indices in the lists of an assembly. */
export interface PartFirsts {
  readonly branch: number;
  readonly unknown: number;
  readonly draw: number;
}

/** Under what the elements of a machine in this frame lie. */
export const conditionsOf = (job: Job, { elements }: Drawn, frame: Frame): Conditions => ({
  systemVoltage: job.systemVoltage,
  engine: frame.engine,
  charging: frame.engine === "running" && chargerFitted(elements, frame.out),
  joints: frame.joints,
});

export function assemble(job: Job, machine: Id | null, frame: Frame): Assembly {
  const drawn = drawnOf(job, machine);
  const { circuit, elements, cavities, joints } = drawn;
  const { parts } = circuit;
  const blows = blowsOf(frame.faults, circuit, elements, (cavity) => cavities.get(cavity) ?? []);
  const conditions = conditionsOf(job, drawn, frame);
  const points = new Points();
  const open = openedPins(job, drawn, frame.out);
  for (const [pin, fates] of blows.pins)
    if (fates.some(({ fate }) => fate === "open" || fate === "extra-ohms")) open.add(pin);
  const chassis = points.of("chassis");
  points.of("nowhere");
  const own = (ref: PinRef) => points.of(open.has(ref) ? `own ${ref}` : ref);

  const endsAt = new Map<PinRef, string[]>();
  /** Where a wire's end lies: an opened joint parts the wires that meet in it. */
  const endOf = (wire: Wire, ref: PinRef, index: number): number => {
    if (!open.has(ref) || !joints.has(ownerOf(ref))) return points.of(ref);
    const name = `end ${wire.id} ${index}`;
    const known = endsAt.get(ref);
    if (known) known.push(name);
    else endsAt.set(ref, [name]);
    return points.of(name);
  };
  const runs: {
    readonly wire: Wire;
    readonly a: number;
    readonly b: number;
    readonly acts: Acts;
  }[] = [];
  for (const one of circuit.wires) {
    const a = endOf(one, one.from, 0);
    const b = endOf(one, one.to, 1);
    const acts = wireActs(one, blows.wires.get(one.id) ?? [], frame.joints);
    if (acts === "joined") points.join(a, b);
    else if (acts !== "open") runs.push({ wire: one, a, b, acts });
  }
  /** Points of each part's own pins, in the order of the parts. */
  const pinPoints: ReadonlyMap<PinId, number>[] = [];
  parts.forEach((part, index) => {
    const pins = new Map<PinId, number>();
    for (const { id, ref } of drawn.pins[index] ?? []) {
      const point = points.of(ref);
      pins.set(id, open.has(ref) ? own(ref) : point);
    }
    pinPoints.push(pins);
    if (part.kind !== "ground") return;
    const place = chassisPlace(part);
    points.join(
      own(pinRef(part.id, "1")),
      place === CHASSIS_PLACE ? chassis : points.of(`place ${place}`),
    );
  });
  const batteries = parts.filter((part) => part.kind === "battery");
  const [first] = batteries;
  const plus = first ? points.of(pinRef(first.id, "+")) : null;
  const minus = first ? points.of(pinRef(first.id, "-")) : null;
  const pages = placePages({ parts, points, own, chassis, plus, minus }, job.systemVoltage);
  const bridges = bridge({ circuit, points, own, open, chassis, plus, cavities, endsAt }, blows);

  const { nodeOf, count } = points.number();
  const node = (point: number) => nodeOf[point] as number;
  let nodeCount = count;
  const branches: Branch[] = runs.map(({ wire, a, b, acts }) => ({
    a: node(a),
    b: node(b),
    owner: wire.id,
    element: null,
    acts,
    gate: null,
    closedIn: null,
  }));
  const deciders = new Map<string, Decider>();
  const unknowns: Unknown[] = [];
  const draws: Draw[] = [];
  const chassisOnly = [node(chassis)];
  const firstOf: PartFirsts[] = [];
  parts.forEach((part, index) => {
    const pins = pinPoints[index] as ReadonlyMap<PinId, number>;
    const insides = new Map<PinId, number>();
    const at = (pin: PinId): number => {
      const point = pins.get(pin);
      if (point !== undefined) return node(point);
      if (!pin.startsWith(INSIDE)) throw new Error(`${part.id} has no pin ${pin}`);
      const known = insides.get(pin) ?? nodeCount++;
      insides.set(pin, known);
      return known;
    };
    firstOf.push({ branch: branches.length, unknown: unknowns.length, draw: draws.length });
    const laid = laidIn(part, elements.get(part.id) ?? [], {
      conditions,
      fatesOf: (element) => blows.elements.get(element),
      at,
      chassis: chassisOnly,
    });
    for (const branch of laid.branches) branches.push(branch);
    for (const decider of laid.deciders)
      if (!deciders.has(decider.id)) deciders.set(decider.id, decider);
    for (const draw of laid.draws) draws.push(draw);
    for (const unknown of laid.unknowns) unknowns.push(unknown);
  });
  firstOf.push({ branch: branches.length, unknown: unknowns.length, draw: draws.length });
  for (const branch of [...pages.branches, ...bridges]) branches.push(placeBranch(branch, node));
  for (const unknown of pages.unknowns)
    unknowns.push({ ...unknown, nodes: unknown.nodes.map(node) });
  return {
    drawn,
    frame,
    conditions,
    circuit,
    parts: drawn.parts,
    cavities,
    nodeAt: (name) => {
      const point = points.find(name);
      return point === null ? null : node(point);
    },
    nodeCount,
    firstOf,
    branches,
    deciders: [...deciders.values()],
    unknowns,
    draws,
    grounds: minus === null ? [node(chassis)] : [node(minus), node(chassis)],
    systemVoltage: job.systemVoltage,
    batteries,
    open,
    joints,
    endsAt,
  };
}

/** How a wire conducts; `joined` where nobody knows its ohms and they count as none. */
function wireActs(
  wire: Wire,
  blown: readonly JointBlow[],
  joints: Conditions["joints"],
): Acts | "joined" | "open" {
  if (blown.some(({ fate }) => fate === "open")) return "open";
  const healthy = wireOhms(wire);
  const added = seriesOhms(blown);
  if (healthy === null && added === 0)
    return joints === "real" ? { is: "ohmic", ...unknownWireOhms(wire) } : "joined";
  const ohms = healthy ?? 0;
  return {
    is: "ohmic",
    ohms: ohms + added,
    low: ohms * 0.85 + added,
    high: ohms * 1.3 + 0.02 + added,
  };
}

/** Pins that are parted from the harness. A plug's id stands for the pins tied to its cavities. */
export function openedPins(job: Job, { circuit, pins }: Drawn, out: readonly Id[]): Set<PinRef> {
  const open = new Set<PinRef>();
  const ids = new Set(out);
  if (ids.size > 0) {
    circuit.parts.forEach((part, index) => {
      if (!ids.has(part.id)) return;
      for (const { ref } of pins[index] ?? []) open.add(ref);
    });
    for (const link of job.links) if (ids.has(ownerOf(link.cavity))) open.add(link.pin);
  }
  return open;
}

/** What each part declares, by its id. */
type Elements = ReadonlyMap<Id, readonly Element[]>;

/** Whether anything that drives with the engine is there to charge the battery. */
const chargerFitted = (elements: Elements, out: readonly Id[]): boolean =>
  [...elements].some(
    ([id, own]) =>
      !out.includes(id) &&
      own.some(({ law }) => law.is === "source" && law.live === "engine-running"),
  );
