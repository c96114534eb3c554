import { addTo, keptOf } from "../base/index.ts";
import type { CheckResult } from "../check/index.ts";
import { circuitOf } from "../circuit/index.ts";
import {
  type Cavity,
  type CavityRef,
  type Colour,
  cavityRef,
  type Id,
  type Job,
  type Machine,
  type MachineWire,
  ownerOf,
  type PinRef,
  type Plug,
  type Reading,
  type Wire,
} from "../job/index.ts";
import type { Role } from "../roles/index.ts";

/** A property of a wire, as the machine at hand has it and as the diagram draws it. */
export interface WireFact<T> {
  readonly onMachine: T | null;
  readonly onDiagram: T | null;
}

/** All that is known of one cavity, gathered from diagram, plug, links and machine. */
export interface CavityFacts {
  readonly ref: CavityRef;
  readonly cavity: Cavity;
  /** Pins tied to it, normally one. */
  readonly pins: readonly PinRef[];
  /** What the check says of the first tied module pin; null when none is tied. */
  readonly role: Role | null;
  readonly machineWire: MachineWire | null;
  readonly diagramWires: readonly Wire[];
  readonly colour: WireFact<Colour>;
  readonly number: WireFact<string>;
  /** Square millimetres. */
  readonly mm2: WireFact<number>;
  /** Readings with a probe there, in the order in which they were taken. */
  readonly readings: readonly Reading[];
}

/** One entry a cavity, in the order in which the plug lists them. */
export function cavityFacts(
  job: Job,
  machine: Machine,
  plug: Plug,
  check: Pick<CheckResult, "roles">,
): CavityFacts[] {
  const pinsIn = pinsByCavity(job.links);
  const seenIn = wiresByCavity(machine.wires);
  const refs = plug.cavities.map((cavity) => cavityRef(plug.id, cavity.mark));
  const wiresAt = wiresAtPins(
    job,
    machine.id,
    new Set(refs.flatMap((ref) => pinsIn.get(ref) ?? [])),
  );
  const roles = rolesByPin(check.roles);
  return plug.cavities.map((cavity, place) => {
    const ref = refs[place] ?? "";
    const pins = pinsIn.get(ref) ?? NO_PINS;
    const machineWire = seenIn.get(ref) ?? null;
    const diagramWires = pins.flatMap((pin) => wiresAt.get(pin) ?? []);
    const first = <T>(pick: (wire: Wire) => T | undefined): T | null => {
      for (const wire of diagramWires) {
        const value = pick(wire);
        if (value !== undefined) return value;
      }
      return null;
    };
    return {
      ref,
      cavity,
      pins,
      role: pins.map((pin) => roles.get(pin)).find((role) => role !== undefined) ?? null,
      machineWire,
      diagramWires,
      colour: { onMachine: machineWire?.colour ?? null, onDiagram: first((wire) => wire.colour) },
      number: { onMachine: machineWire?.number ?? null, onDiagram: first((wire) => wire.number) },
      mm2: { onMachine: machineWire?.mm2 ?? null, onDiagram: first((wire) => wire.mm2) },
      readings: machine.readings.filter((reading) => touches(reading, ref, pins)),
    };
  });
}

const NO_PINS: readonly PinRef[] = [];

const pinsByCavity = keptOf((links: Job["links"]) => {
  const pins = new Map<CavityRef, PinRef[]>();
  for (const { cavity, pin } of links) addTo(pins, cavity, pin);
  return pins;
});

/** The first that was noted of each cavity. */
const wiresByCavity = keptOf(
  (wires: Machine["wires"]) => new Map(wires.toReversed().map((wire) => [wire.cavity, wire])),
);

const rolesKnown = new WeakMap<readonly Role[], ReadonlyMap<PinRef, Role>>();

/** What the check says of each pin; a list of roles is never changed in place. */
export function rolesByPin(roles: readonly Role[]): ReadonlyMap<PinRef, Role> {
  const known = rolesKnown.get(roles) ?? new Map(roles.map((role) => [role.pin, role]));
  rolesKnown.set(roles, known);
  return known;
}

/** How a cavity is used; `untied`: no pin of the diagram is matched to it yet. */
export type CavityState = "wired" | "untied" | "empty" | "blocked";

export function cavityState({ cavity, pins }: CavityFacts): CavityState {
  if (pins.length > 0) return "wired";
  if (cavity.blocked) return "blocked";
  return cavity.empty ? "empty" : "untied";
}

/** What the machine has where that is known, else what the diagram draws. */
export const known = <T>(fact: WireFact<T>): T | null => fact.onMachine ?? fact.onDiagram;

type WiresByPin = ReadonlyMap<PinRef, readonly Wire[]>;

const sorted = new WeakMap<readonly Wire[], WiresByPin>();

/** Every wire end by the pin it is on, as the machine is built. */
export function wiresByPin(job: Job, machine: Id): WiresByPin {
  const { wires } = circuitOf(job, machine);
  const known = sorted.get(wires);
  if (known) return known;
  const byPin = new Map<PinRef, Wire[]>();
  for (const wire of wires) {
    addTo(byPin, wire.from, wire);
    if (wire.to !== wire.from) addTo(byPin, wire.to, wire);
  }
  // A list that may still grow can't be followed.
  if (Object.isFrozen(wires)) sorted.set(wires, byPin);
  return byPin;
}

/** The wire ends on some pins, found without sorting all the others: most edits change the list. */
export function wiresAtPins(job: Job, machine: Id, pins: ReadonlySet<PinRef>): WiresByPin {
  const byPin = new Map<PinRef, Wire[]>();
  for (const wire of circuitOf(job, machine).wires) {
    const { from, to } = wire;
    if (pins.has(from)) addTo(byPin, from, wire);
    if (to !== from && pins.has(to)) addTo(byPin, to, wire);
  }
  return byPin;
}

/** Plugged in, a module's own pin and the cavity it is tied to are one node; unplugged, two. */
function touches(reading: Reading, ref: CavityRef, pins: readonly PinRef[]): boolean {
  const unplugged = reading.when.unplugged ?? [];
  return [reading.red, reading.black].some(
    (probe) => probe === ref || (pins.includes(probe) && !unplugged.includes(ownerOf(probe))),
  );
}
