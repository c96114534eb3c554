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
  const elements = new Map(parts.map((part) => [part.id, elementsOf(part, job.systemVoltage)]));
  const pins = parts.map((part) =>
    pinsOf(part).map(({ id }): Pin => ({ id, ref: pinRef(part.id, id) })),
  );
  const isJoint = (part: Part, index: number) =>
    elements.get(part.id)?.length === 0 &&
    (pins[index] as readonly Pin[]).every(({ id }) => terminalOf(part, id) === null);
  return {
    circuit,
    parts: new Map(parts.map((part) => [part.id, part])),
    elements,
    pins,
    cavities: cavityPins(job),
    joints: new Set(parts.filter(isJoint).map(({ id }) => id)),
  };
}
