import {
  type Between,
  doesWork,
  held,
  MAY_ACT,
  type OperatingPoint,
  type Settled,
} from "../circuit/index.ts";
import type { Id, Job, Part, When } from "../job/index.ts";
import { idsOff } from "./cavity-pins.ts";
import { marginalRelays } from "./marginal-relays.ts";
import { AMMETER, testLamp } from "./meter.ts";
import type { ReadingSetup } from "./prediction.ts";
import { type Shared, sharedFor } from "./shared.ts";

/** What a reading sets in motion on a machine that is as drawn. */
export interface Moves {
  /** Loads and relays that come on because of the instrument, or through it. */
  readonly moves: readonly Id[];
  /** Those that the state itself has on, and rest has not. */
  readonly stateMoves: readonly Id[];
  /** Modules that are plugged in and drive nobody knows what, so that there may be more. */
  readonly unknown: readonly Id[];
}

/**
 * What moves or comes on while a reading is taken, the instrument in place: a test lamp or an
 * ammeter carries current, a meter alone does not. Null where the state can't be, so that nothing
 * can be said.
 */
export const movesOf = (
  job: Job,
  machine: Id,
  setup: Pick<ReadingSetup, "quantity" | "red" | "black" | "when" | "with">,
): Moves | null => movesWith(sharedFor(job, machine), setup);

/** The same among other readings of the machine. */
function movesWith(
  shared: Shared,
  setup: Pick<ReadingSetup, "quantity" | "red" | "black" | "when" | "with">,
): Moves | null {
  const state = stateMovesWith(shared, setup.when);
  if (state === null) return null;
  const instruments = instrumentsOf(shared.job, setup);
  if (instruments.length === 0) return { moves: [], ...state };
  const bridges = bridgesOf(shared.job, setup.when);
  const without = new Set(acting(shared, setup.when, bridges));
  const moves = acting(shared, setup.when, [...bridges, ...instruments]).filter(
    (id) => !without.has(id),
  );
  return { moves, ...state };
}

/** What a state has on by itself: the switches as they stand, what is out, a jumper fitted. */
export const stateMoves = (job: Job, machine: Id, when: When): Omit<Moves, "moves"> | null =>
  stateMovesWith(sharedFor(job, machine), when);

function stateMovesWith(shared: Shared, when: When): Omit<Moves, "moves"> | null {
  if (shared.bench(when).wiring.problems.length > 0) return null;
  const rest = new Set(acting(shared, {}, []));
  return {
    stateMoves: acting(shared, when, bridgesOf(shared.job, when)).filter((id) => !rest.has(id)),
    unknown: unknownDrivers(shared, when),
  };
}

/**
 * Loads and relays with enough volts to do something. A relay near its pull-in counts as pulled in,
 * and what is behind it comes on: better one name too many than one too few.
 */
function acting(shared: Shared, when: When, extra: readonly Between[]): readonly Id[] {
  const key = `acting ${JSON.stringify([when, extra])}`;
  return shared.once(key, () => {
    const bench = shared.bench(when, extra);
    const { wiring, settled } = bench;
    const found = new Set(actingAt(shared, settled, settled.point));
    for (const decider of wiring.deciders)
      if (decider.is === "coil" && settled.states.get(decider.id)) found.add(decider.part);
    const near = [...marginalRelays(bench).keys()];
    if (near.some((id) => !settled.states.get(id))) {
      const states = new Map([...settled.states, ...near.map((id) => [id, true] as const)]);
      const point = held(wiring, states, settled.branches.slice(wiring.branches.length));
      for (const id of actingAt(shared, settled, point)) found.add(id);
    }
    return [...found];
  });
}

function actingAt(
  { parts, job }: Shared,
  { branches }: Settled,
  point: OperatingPoint,
): readonly Id[] {
  const least = MAY_ACT * job.systemVoltage;
  const found = new Set<Id>();
  for (const [index, { a, b, element, acts }] of branches.entries()) {
    if (!element || !Number.isFinite(point.ohms[index])) continue;
    const part = parts.get(element.part);
    // what a module draws for itself neither moves nor lights
    if (!part || part.kind === "module" || found.has(part.id)) continue;
    const { law } = element;
    if (!doesWork(law)) continue;
    // a diode across a coil is not what the coil does
    if (acts.is === "junction" && law.is !== "led") continue;
    const volts = (point.volts[a] as number) - (point.volts[b] as number);
    if (Math.abs(volts) >= least) found.add(part.id);
  }
  return [...found];
}

function instrumentsOf(
  { systemVoltage }: Job,
  { quantity, red, black, with: instrument }: Parameters<typeof movesWith>[1],
): readonly Between[] {
  if (quantity === "amps") return [{ red, black, acts: AMMETER }];
  return instrument === "test-lamp" ? [{ red, black, acts: testLamp(systemVoltage) }] : [];
}

/** Ω of a jumper lead with its clips (common practice, no source). */
const JUMPER = { is: "ohmic", ohms: 0.02, low: 0.005, high: 0.1 } as const;

/** A jumper that stands in joins all the cavities it is put into. */
function bridgesOf({ standIns }: Job, { standIn }: When): readonly Between[] {
  const own = standIns?.find(({ id }) => id === standIn);
  if (own?.kind !== "jumper") return [];
  const [first, ...others] = own.map.map(({ cavity }) => cavity);
  return first === undefined
    ? []
    : others.map((cavity) => ({ red: first, black: cavity, acts: JUMPER }));
}

/** Modules of which nobody has said what they do, and stand-ins of a kind not worked out here. */
function unknownDrivers({ parts, job }: Shared, when: When): readonly Id[] {
  const off = idsOff(when);
  const modules = [...parts.values()].filter(
    (part) => part.kind === "module" && !part.behaviour && !off.includes(part.id),
  );
  const standIn = job.standIns?.find(({ id }) => id === when.standIn);
  return [
    ...modules.map(({ id }) => id),
    ...(standIn && standIn.kind !== "jumper" ? [standIn.id] : []),
  ];
}

/** The parts of one machine by their ids, as its readings see them. */
export const partsById = (job: Job, machine: Id): ReadonlyMap<Id, Part> =>
  sharedFor(job, machine).parts;
