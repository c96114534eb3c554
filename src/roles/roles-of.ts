import { ask, circuitOf, LinkedNetwork } from "../circuit/index.ts";
import type { CavityRef, Id, Job, PartOf, PinRef } from "../job/index.ts";
import { type AdoptedRoles, adoptedRoles } from "./adopted.ts";
import { judgeWord } from "./judge.ts";
import { moduleCircuit, type PinCircuit } from "./module-circuit.ts";
import { printedWord } from "./printed.ts";
import type { Role } from "./role.ts";
import { pinSentence } from "./sentence.ts";

/** A role as paper and circuit have it; what the meter says is added by who knows the readings. */
export type PaperRole = Omit<Role, "meterRole" | "meterFits" | "meterVerdict">;

/** Roles of every module pin of a job on one machine, in the order of the diagram. */
export function rolesOf(job: Job, machine: Id): readonly PaperRole[] {
  const circuit = circuitOf(job, machine);
  const network = new LinkedNetwork();
  network.update(circuit, job.systemVoltage);
  const cavityOf = cavitiesOfPins(job.links);
  const adopted = adoptedRoles(job.adopted, machine);
  const modules = circuit.parts.filter((part): part is PartOf<"module"> => part.kind === "module");
  return modules.flatMap((module) => {
    const { value } = ask(network, (sight) => moduleCircuit(sight, module));
    return paperRoles(module, value, (pin) => cavityOf.get(pin) ?? null, job.words, adopted);
  });
}

/** The cavity that each pin is tied to; of several, the first. */
export function cavitiesOfPins(links: Job["links"]): ReadonlyMap<PinRef, CavityRef> {
  const cavityOf = new Map<PinRef, CavityRef>();
  for (const { pin, cavity } of links) if (!cavityOf.has(pin)) cavityOf.set(pin, cavity);
  return cavityOf;
}

/** Holds the words printed beside a module's pins against what the circuit says of them. */
export function paperRoles(
  module: PartOf<"module">,
  pins: readonly PinCircuit[],
  cavityOf: (pin: PinRef) => CavityRef | null,
  taught: Job["words"],
  adopted: AdoptedRoles,
): readonly PaperRole[] {
  return pins.map((pin, index): PaperRole => {
    const cavity = cavityOf(pin.pin);
    const drawn = module.pins[index];
    const word = drawn ? printedWord(drawn, taught) : { text: null, meanings: [] };
    const { printedRole, verdict } = judgeWord(word, pin.fits, pin.side);
    const [only] = pin.fits;
    const taken = adopted.get(pin.pin);
    return {
      pin: pin.pin,
      cavity,
      printed: word.text,
      printedRole,
      ...(word.meanings.length > 1
        ? { printedMeanings: [...new Set(word.meanings.map(({ role }) => role))] }
        : {}),
      fits: pin.fits,
      circuitRole: pin.fits.length === 1 && only ? only : "undecided",
      circuitSide: pin.side,
      ...(taken ? { adopted: taken } : {}),
      verdict,
      because: pin.because,
      sentence: pinSentence(pin.walk, pin, cavity ? `cavity ${cavity}` : `pin ${pin.pin}`, {
        text: word.text,
        contradicted: verdict === "contradicted",
      }),
    };
  });
}
