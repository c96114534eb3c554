import { type Id, type Job, type Part, type PinId, type PinRef, pinRef } from "../../job/index.ts";
import { type Element, elementsOf, pinsOf, terminalOf } from "../kinds/index.ts";
import { type Circuit, circuitOf } from "../machine-circuit.ts";
import { type CavityPins, cavityPins } from "./cavity-pins.ts";
import { Kept } from "./kept.ts";

/** What a machine's parts declare: the same in every frame. */
export interface Drawn {
  readonly circuit: Circuit;
  readonly parts: ReadonlyMap<Id, Part>;
  /** Of each part, by its id. */
  readonly elements: ReadonlyMap<Id, readonly Element[]>;
  /** Of each part, in the order of the parts. */
  readonly pins: readonly (readonly Pin[])[];
  readonly cavities: CavityPins;
  /** Parts that are nothing but a place where wires meet. */
  readonly joints: ReadonlySet<Id>;
}

interface Pin {
  readonly id: PinId;
  readonly ref: PinRef;
}

const kept = new Kept<Drawn>();

export const drawnOf = (job: Job, machine: Id | null): Drawn =>
  kept.of(job, machine, JSON.stringify(machine), () => makeDrawn(job, machine));

function makeDrawn(job: Job, machine: Id | null): Drawn {
  const circuit = circuitOf(job, machine);
  const { parts } = circuit;
  const declared = parts.map((part) => declaredBy(part, job.systemVoltage));
  return {
    circuit,
    parts: new Map(parts.map((part) => [part.id, part])),
    elements: new Map(parts.map(({ id }, index) => [id, (declared[index] as Declared).elements])),
    pins: declared.map(({ pins }) => pins),
    cavities: cavityPins(job),
    joints: new Set(
      parts.flatMap(({ id }, index) => ((declared[index] as Declared).isJoint ? [id] : [])),
    ),
  };
}

/** What one part declares. */
interface Declared {
  readonly elements: readonly Element[];
  readonly pins: readonly Pin[];
  readonly isJoint: boolean;
}

const known = new WeakMap<Part, { readonly systemVoltage: number; readonly declared: Declared }>();

/** Kept from one state of the drawing to the next, for a part that can't be changed in place. */
function declaredBy(part: Part, systemVoltage: number): Declared {
  const before = known.get(part);
  if (before?.systemVoltage === systemVoltage) return before.declared;
  const elements = elementsOf(part, systemVoltage);
  const pins = pinsOf(part).map(({ id }): Pin => ({ id, ref: pinRef(part.id, id) }));
  const isJoint = elements.length === 0 && pins.every(({ id }) => terminalOf(part, id) === null);
  const declared = { elements, pins, isJoint };
  if (Object.isFrozen(part)) known.set(part, { systemVoltage, declared });
  return declared;
}
