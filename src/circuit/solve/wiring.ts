import {
  type CavityRef,
  cavityRef,
  type Id,
  isFixedProbe,
  type Job,
  ownerOf,
  type Part,
  type PinId,
  type PinRef,
  type Position,
  type Probe,
  pinRef,
  type When,
} from "../../job/index.ts";
import { type Element, elementsOf, pinsOf, restPosition, terminalOf } from "../kinds/index.ts";
import { type Circuit, circuitOf } from "../machine-circuit.ts";
import { CHASSIS_PLACE, chassisPlace, pageKey } from "../places.ts";
import type { Branch, Decider, Unknown } from "./branch.ts";
import { type Conditions, lower } from "./lower.ts";
import { Points } from "./points.ts";
import { wireOhms } from "./wire-ohms.ts";

/** Ω of a wire whose size or length nobody has said, on a healthy machine. */
export const UNKNOWN_WIRE = { is: "ohmic", ohms: 0.25, low: 1e-3, high: 0.5 } as const;

/** A machine's circuit put into one state: nodes, what lies between them, and where probes go. */
export interface Wiring {
  readonly nodeCount: number;
  readonly branches: readonly Branch[];
  readonly deciders: readonly Decider[];
  readonly unknowns: readonly Unknown[];
  /** Nodes to count voltages from, the best first. */
  readonly grounds: readonly number[];
  readonly systemVoltage: number;
  /** Reasons why `when` can't be meant, e.g. a position that the switch has not. */
  readonly problems: readonly string[];
  probe(probe: Probe, side?: Side): Probed;
}

/** The harness's side of a joint, or the part's own. */
export type Side = "harness" | "own";

export type Probed =
  | { readonly ok: true; readonly node: number }
  /** `nothing`: no such place. `either`: an opened joint whose two halves have one name. */
  | { readonly ok: false; readonly why: "nothing" | "either"; readonly sentence: string };

/** How joints count: see `Conditions`. */
export function wire(
  job: Job,
  machine: Id | null,
  when: When,
  joints: Conditions["joints"] = "ideal",
): Wiring {
  const circuit = circuitOf(job, machine);
  const elements = new Map(
    circuit.parts.map((part) => [part.id, elementsOf(part, job.systemVoltage)]),
  );
  const conditions: Conditions = {
    systemVoltage: job.systemVoltage,
    engine: when.engine ?? "off",
    charging: when.engine === "running" && chargerFitted(elements, when),
    switches: when.switches ?? {},
    joints,
  };
  const points = new Points();
  const open = openedPins(job, circuit, when);
  const chassis = points.of("chassis");
  const nowhere = points.of("nowhere");
  const own = (ref: PinRef) => points.of(open.has(ref) ? `own ${ref}` : ref);

  const wires: Branch<number>[] = [];
  const jointIds = jointParts(circuit, elements);
  for (const one of circuit.wires) {
    const ends = ([one.from, one.to] as const).map((ref, index) => {
      // an opened joint parts the wires that meet in it
      const apart = open.has(ref) && jointIds.has(ownerOf(ref));
      return points.of(apart ? `end ${one.id} ${index}` : ref);
    }) as [number, number];
    const ohms = wireOhms(one);
    const base = { a: ends[0], b: ends[1], owner: one.id, element: null, gate: null };
    if (ohms !== null) {
      const acts = { is: "ohmic", ohms, low: ohms * 0.85, high: ohms * 1.3 + 0.02 } as const;
      wires.push({ ...base, acts });
    } else if (joints === "real") wires.push({ ...base, acts: UNKNOWN_WIRE });
    else points.join(ends[0], ends[1]);
  }

  const batteries = circuit.parts.filter((part) => part.kind === "battery");
  const { parts } = circuit;
  for (const part of parts) {
    for (const pin of pinsOf(part)) {
      points.of(pinRef(part.id, pin.id));
      own(pinRef(part.id, pin.id));
    }
  }
  const pages = joinPages(parts, points, own);
  for (const part of parts) {
    if (part.kind !== "ground") continue;
    const place = chassisPlace(part);
    points.join(
      own(pinRef(part.id, "1")),
      place === CHASSIS_PLACE ? chassis : points.of(`place ${place}`),
    );
  }

  const branches: Branch<number>[] = [...wires];
  const deciders = new Map<string, Decider<number>>();
  const unknowns: Unknown<number>[] = [];
  for (const part of parts) {
    const at = (pin: PinId) => own(pinRef(part.id, pin));
    for (const element of elements.get(part.id) ?? []) {
      const lowered = lower(part, element, conditions);
      for (const branch of lowered.branches)
        branches.push({ ...branch, a: at(branch.a), b: at(branch.b) });
      for (const decider of lowered.deciders)
        deciders.set(decider.id, placeDecider(decider, at, chassis));
      for (const unknown of lowered.unknowns)
        unknowns.push({ ...unknown, nodes: unknown.nodes.map(at) });
    }
    const unsaid = unsaidPins(part);
    if (unsaid) unknowns.push({ ...unsaid, nodes: unsaid.nodes.map(at) });
  }

  const [firstBattery] = batteries;
  const plus = firstBattery ? points.of(pinRef(firstBattery.id, "+")) : null;
  const minus = firstBattery ? points.of(pinRef(firstBattery.id, "-")) : null;
  const beyond: number[] = [];
  for (const page of pages) {
    if (page.is === "ground") points.join(page.point, chassis);
    else if (page.is === "supply") {
      if (plus !== null) points.join(page.point, plus);
      else {
        branches.push({
          a: page.point,
          b: chassis,
          owner: page.part,
          element: null,
          gate: null,
          acts: {
            is: "source",
            volts: job.systemVoltage * 1.05,
            low: job.systemVoltage * 0.99,
            high: job.systemVoltage * 1.1,
            ohms: 0.02,
          },
        });
      }
    } else if (page.untraced && page.is !== "unused") beyond.push(page.point);
  }
  if (beyond.length > 0) {
    const posts = [plus, minus].flatMap((post) => (post === null ? [] : [post]));
    unknowns.push({
      part: pages.find((page) => page.point === beyond[0])?.part ?? "",
      nodes: [...beyond, chassis, ...posts],
      what: "what lies beyond a line that is not traced",
    });
  }

  const { nodeOf, count } = points.number();
  const node = (point: number) => nodeOf[point] as number;
  const placed = {
    branches: branches.map((one) => ({ ...one, a: node(one.a), b: node(one.b) })),
    deciders: [...deciders.values()].map((one) => numberDecider(one, node)),
    unknowns: unknowns.map((one) => ({ ...one, nodes: one.nodes.map(node) })),
  };
  const cavities = cavityPins(job);

  return {
    nodeCount: count,
    ...placed,
    grounds: minus === null ? [node(chassis)] : [node(minus), node(chassis)],
    systemVoltage: job.systemVoltage,
    problems: problemsOf(circuit, job, when),
    probe(probe, side = "harness") {
      const nothing = (sentence: string): Probed => ({ ok: false, why: "nothing", sentence });
      if (isFixedProbe(probe)) {
        if (probe === "chassis") return { ok: true, node: node(chassis) };
        if (batteries.length === 0) return nothing(`No battery is drawn, so ${probe} is nowhere.`);
        if (batteries.length > 1)
          return nothing(
            `There are ${batteries.length} batteries: say which one, e.g. ${batteries[0]?.id}:+.`,
          );
        return { ok: true, node: node((probe === "battery+" ? plus : minus) as number) };
      }
      const cavity = cavities.get(probe);
      if (cavity !== undefined && cavity.length === 0) {
        return { ok: true, node: node(nowhere) };
      }
      const ref = cavity?.[0] ?? probe;
      const part = circuit.parts.find((one) => one.id === ownerOf(ref));
      const isModule = part?.kind === "module";
      const wantsOwn = side === "own" || (cavity === undefined && isModule);
      const point = points.find(wantsOwn && open.has(ref) ? `own ${ref}` : ref);
      if (!part || point === null)
        return nothing(`There is no ${probe} on this machine: the probe is on nothing.`);
      if (!wantsOwn && open.has(ref) && jointIds.has(part.id)) {
        const ends = endsAt(circuit, ref);
        const [only] = ends;
        if (ends.length > 1) {
          return {
            ok: false,
            why: "either",
            sentence: `${ref} is open, and each half of it is a different point: meter at the far end of the wire.`,
          };
        }
        if (only !== undefined) return { ok: true, node: node(points.of(only)) };
      }
      return { ok: true, node: node(point) };
    },
  };
}

const endsAt = (circuit: Circuit, ref: PinRef): string[] =>
  circuit.wires.flatMap((one) =>
    ([one.from, one.to] as const).flatMap((end, index) =>
      end === ref ? [`end ${one.id} ${index}`] : [],
    ),
  );

/** Cavities of all plugs with the pins they are tied to. */
function cavityPins(job: Job): Map<CavityRef, PinRef[]> {
  const pins = new Map<CavityRef, PinRef[]>();
  for (const plug of job.plugs) {
    for (const cavity of plug.cavities) pins.set(cavityRef(plug.id, cavity.mark), []);
  }
  for (const { cavity, pin } of job.links) {
    const known = pins.get(cavity);
    if (known) known.push(pin);
    else pins.set(cavity, [pin]);
  }
  return pins;
}

/** Pins that are parted from the harness. A plug's id stands for the pins tied to its cavities. */
function openedPins(job: Job, circuit: Circuit, when: When): ReadonlySet<PinRef> {
  const ids = new Set([...(when.unplugged ?? []), ...(when.removed ?? [])]);
  const open = new Set<PinRef>();
  for (const part of circuit.parts) {
    if (!ids.has(part.id)) continue;
    for (const pin of pinsOf(part)) open.add(pinRef(part.id, pin.id));
  }
  for (const link of job.links) if (ids.has(ownerOf(link.cavity))) open.add(link.pin);
  return open;
}

/** What each part declares, by its id. */
type Elements = ReadonlyMap<Id, readonly Element[]>;

/** Whether anything that drives with the engine is there to charge the battery. */
const chargerFitted = (elements: Elements, when: When): boolean =>
  [...elements].some(
    ([id, own]) =>
      !when.removed?.includes(id) &&
      own.some(({ law }) => law.is === "source" && law.live === "engine-running"),
  );

/** Parts that are nothing but a place where wires meet. */
function jointParts(circuit: Circuit, elements: Elements): ReadonlySet<Id> {
  return new Set(
    circuit.parts
      .filter(
        (part) =>
          elements.get(part.id)?.length === 0 &&
          pinsOf(part).every((pin) => terminalOf(part, pin.id) === null),
      )
      .map((part) => part.id),
  );
}

interface PageEnd {
  readonly part: Id;
  readonly point: number;
  readonly is: string | undefined;
  readonly untraced: boolean;
}

/** Joins page ends of equal label; one that stays alone goes on, nobody knows where. */
function joinPages(
  parts: readonly Part[],
  points: Points,
  own: (ref: PinRef) => number,
): readonly PageEnd[] {
  const counts = new Map<string, number>();
  for (const part of parts) {
    const key = part.kind === "offpage" ? pageKey(part) : null;
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return parts.flatMap((part): PageEnd[] => {
    if (part.kind !== "offpage") return [];
    const key = pageKey(part);
    const point = own(pinRef(part.id, "1"));
    if (key !== null) points.join(point, points.of(`page ${key}`));
    return [{ part: part.id, point, is: part.is, untraced: key === null || counts.get(key) === 1 }];
  });
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

function placeDecider(
  decider: Decider<PinId>,
  at: (pin: PinId) => number,
  chassis: number,
): Decider<number> {
  switch (decider.is) {
    case "coil":
      return { ...decider, a: at(decider.a), b: at(decider.b) };
    case "fed":
      return { ...decider, pairs: decider.pairs.map(([a, b]) => [at(a), at(b)] as const) };
    case "level":
      return {
        ...decider,
        input: decider.input === null ? null : at(decider.input),
        grounds: [...decider.grounds.map(at), chassis],
      };
  }
}

function numberDecider(decider: Decider, node: (point: number) => number): Decider {
  switch (decider.is) {
    case "coil":
      return { ...decider, a: node(decider.a), b: node(decider.b) };
    case "fed":
      return { ...decider, pairs: decider.pairs.map(([a, b]) => [node(a), node(b)] as const) };
    case "level":
      return {
        ...decider,
        input: decider.input === null ? null : node(decider.input),
        grounds: decider.grounds.map(node),
      };
  }
}

function problemsOf(circuit: Circuit, job: Job, when: When): readonly string[] {
  const problems: string[] = [];
  const part = (id: Id) => circuit.parts.find((one) => one.id === id);
  for (const [id, position] of Object.entries(when.switches ?? {}) as [Id, Position][]) {
    const found = part(id);
    if (found?.kind !== "switch") problems.push(`${id} is not a switch of this machine.`);
    else if (!found.positions.includes(position))
      problems.push(`${id} has no position "${position}"; it has ${found.positions.join(", ")}.`);
    else if (restPosition(found) === undefined) problems.push(`${id} has no positions.`);
  }
  for (const id of [...(when.unplugged ?? []), ...(when.removed ?? [])]) {
    if (!part(id) && !job.plugs.some((plug) => plug.id === id))
      problems.push(`There is no ${id} on this machine to take out.`);
  }
  return problems;
}
