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
import { type Blows, blowsOf, type Fault, type JointBlow } from "./fault.ts";
import { bridge, seriesOhms } from "./fault-branches.ts";
import { type Conditions, lower } from "./lower.ts";
import { placePages } from "./pages.ts";
import { placeBranch, placeDecider } from "./placing.ts";
import { Points } from "./points.ts";
import { INSIDE, strike } from "./strike.ts";
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
  readonly circuit: Circuit;
  readonly parts: ReadonlyMap<Id, Part>;
  readonly cavities: CavityPins;
  readonly points: Points;
  readonly nodeOf: Int32Array;
  readonly nodeCount: number;
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

export function assemble(job: Job, machine: Id | null, frame: Frame): Assembly {
  const drawn = drawnOf(job, machine);
  const { circuit, elements, cavities, joints } = drawn;
  const { parts } = circuit;
  const blows = blowsOf(frame.faults, circuit, elements, (cavity) => cavities.get(cavity) ?? []);
  const conditions: Conditions = {
    systemVoltage: job.systemVoltage,
    engine: frame.engine,
    charging: frame.engine === "running" && chargerFitted(elements, frame.out),
    joints: frame.joints,
  };
  const points = new Points();
  const open = openedPins(job, drawn, frame.out, blows);
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
    for (const element of elements.get(part.id) ?? []) {
      const fates = blows.elements.get(element);
      const healthy = lower(part, element, conditions);
      const lowered = fates ? strike(healthy, element, fates) : healthy;
      for (const branch of lowered.branches) branches.push(placeBranch(branch, at));
      for (const decider of lowered.deciders) {
        if (!deciders.has(decider.id))
          deciders.set(decider.id, placeDecider(decider, at, chassisOnly));
      }
      for (const draw of lowered.draws ?? []) draws.push({ ...draw, nodes: draw.nodes.map(at) });
      for (const unknown of lowered.unknowns)
        unknowns.push({ ...unknown, nodes: unknown.nodes.map(at) });
    }
    const unsaid = unsaidPins(part);
    if (unsaid) unknowns.push({ ...unsaid, nodes: unsaid.nodes.map(at) });
    const draw = unsaidDraw(part);
    if (draw) draws.push({ ...draw, nodes: draw.nodes.map(at) });
  });
  for (const branch of [...pages.branches, ...bridges]) branches.push(placeBranch(branch, node));
  for (const unknown of pages.unknowns)
    unknowns.push({ ...unknown, nodes: unknown.nodes.map(node) });
  return {
    circuit,
    parts: drawn.parts,
    cavities,
    points,
    nodeOf,
    nodeCount,
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
function openedPins(
  job: Job,
  { circuit, pins }: Drawn,
  out: readonly Id[],
  blows: Blows,
): ReadonlySet<PinRef> {
  const open = new Set<PinRef>();
  const ids = new Set(out);
  if (ids.size > 0) {
    circuit.parts.forEach((part, index) => {
      if (!ids.has(part.id)) return;
      for (const { ref } of pins[index] ?? []) open.add(ref);
    });
    for (const link of job.links) if (ids.has(ownerOf(link.cavity))) open.add(link.pin);
  }
  for (const [pin, fates] of blows.pins) {
    if (fates.some(({ fate }) => fate === "open" || fate === "extra-ohms")) open.add(pin);
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

/** A module of which nobody has said what it draws may draw this, A (common practice, no source). */
const MODULE_AMPS = 2;

/** What a module draws through its feeds, where its behaviour is declared without. */
function unsaidDraw(part: Part): Draw<PinId> | null {
  if (part.kind !== "module" || !part.behaviour || !part.power) return null;
  if (part.behaviour.loads?.length) return null;
  const nodes = [...part.power.supply, ...part.power.ground];
  return { part: part.id, nodes, what: `what ${part.id} draws`, most: MODULE_AMPS };
}

/** Pins of an active part whose doings nobody has declared. */
function unsaidPins(part: Part): Unknown<PinId> | null {
  if (part.kind === "module" && !part.behaviour) {
    return { part: part.id, nodes: part.pins.map((pin) => pin.id), what: `what ${part.id} does` };
  }
  if (part.kind === "sensor") {
    return { part: part.id, nodes: ["+", "-", "S"], what: `what ${part.id} senses` };
  }
  return null;
}
