import { buildNetwork, circuitOf, type Network } from "../circuit/index.ts";
import type { CavityRef, Id, Job, PartOf, PinRef } from "../job/index.ts";
import { inferRoles, type ModuleRoles } from "./infer.ts";
import { judgeWord } from "./judge.ts";
import { printedWord } from "./printed.ts";
import type { Role } from "./role.ts";
import { pinSentence } from "./sentence.ts";
import { trailIds } from "./trail.ts";

/** A role as paper and circuit have it; what the meter says is added by who knows the readings. */
export type PaperRole = Omit<Role, "meterRole" | "meterFits" | "meterVerdict">;

export interface JobRoles {
  readonly network: Network;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly PaperRole[];
}

/** Roles of every module pin of a job on one machine. */
export function rolesOf(job: Job, machine: Id): JobRoles {
  const circuit = circuitOf(job, machine);
  const network = buildNetwork(circuit, job.systemVoltage);
  const cavityOf = new Map<PinRef, CavityRef>();
  for (const link of job.links) {
    if (!cavityOf.has(link.pin)) cavityOf.set(link.pin, link.cavity);
  }
  const modules = circuit.parts.filter((part): part is PartOf<"module"> => part.kind === "module");
  const roles = modules.flatMap((module) => paperRoles(job, inferRoles(network, module), cavityOf));
  return { network, roles };
}

function paperRoles(
  job: Job,
  { explorer, module, pins }: ModuleRoles,
  cavityOf: ReadonlyMap<PinRef, CavityRef>,
): readonly PaperRole[] {
  return pins.map((pin, index): PaperRole => {
    const cavity = cavityOf.get(pin.pin) ?? null;
    const drawn = module.pins[index];
    const word = drawn ? printedWord(drawn, job.words) : { text: null, meanings: [] };
    const { printedRole, verdict } = judgeWord(word, pin.fits, pin.side);
    const because = pin.trail ? trailIds(explorer.network, pin.pin, pin.trail) : [];
    const [only] = pin.fits;
    return {
      pin: pin.pin,
      cavity,
      printed: word.text,
      printedRole,
      fits: pin.fits,
      circuitRole: pin.fits.length === 1 && only ? only : "undecided",
      circuitSide: pin.side,
      verdict,
      because,
      sentence: pinSentence(
        explorer,
        pin,
        because,
        cavity ? `cavity ${cavity}` : `pin ${pin.pin}`,
        {
          text: word.text,
          contradicted: verdict === "contradicted",
        },
      ),
    };
  });
}
