import type { Random } from "../../../../src/base/index.ts";
import type { Job, Machine, PartOf, Reading } from "../../../../src/job/index.ts";
import { modulesOf, type PaperJob, pinsOfModule, type TruePin } from "../paper-job.ts";

/** Findings as `rule chief-subject`: the one thing that the rule is chiefly about. */
export type Expected = readonly string[];

/** One thing said twice and differently, put into a job that is right. */
export interface Disagreement {
  readonly name: string;
  /** The rules whose findings are compared; absent: all of them. */
  readonly rules?: readonly string[];
  /** Readings of the machine as it is would each disagree with it in its own way: none is kept. */
  readonly forgetsReadings?: true;
  /**
   * Changes the job, which is the caller's own copy, and returns all that has to be found besides
   * the pins that are undecided anyway; null where the job has no place for it, or where nobody
   * could see it.
   */
  readonly inject: (random: Random, paper: PaperJob) => Expected | null;
}

export type Tied = TruePin & { readonly cavity: string };

/** Pins that are tied to a cavity and have wires. */
export const wiredPins = (paper: PaperJob): readonly Tied[] =>
  paper.pins.filter((pin): pin is Tied => pin.cavity !== null && !pin.fits.includes("unused"));

export const ownerOf = (ref: string): string =>
  ref.includes(":") ? ref.slice(0, ref.indexOf(":")) : ref;

export const plugWith = ({ job }: PaperJob, cavity: string): Job["plugs"][number] => {
  const plug = job.plugs.find(({ id }) => id === ownerOf(cavity));
  if (!plug) throw new Error(`no plug of ${cavity}`);
  return plug;
};

export const cavityAt = (paper: PaperJob, cavity: string) => {
  const found = plugWith(paper, cavity).cavities.find(({ mark }) => cavity.endsWith(`:${mark}`));
  if (!found) throw new Error(`no cavity ${cavity}`);
  return found;
};

export const moduleOf = ({ job }: PaperJob, id: string): PartOf<"module"> => {
  const part = job.diagram.parts.find((one) => one.id === id);
  if (part?.kind !== "module") throw new Error(`no module ${id}`);
  return part;
};

export const someModule = (
  random: Random,
  paper: PaperJob,
): { module: PartOf<"module">; pins: readonly TruePin[] } => {
  const id = random.pick(modulesOf(paper));
  return { module: moduleOf(paper, id), pins: pinsOfModule(paper, id) };
};

export const firstMachine = ({ job }: PaperJob): Machine => {
  const [machine] = job.machines;
  if (!machine) throw new Error("a job without a machine");
  return machine;
};

/** Forgets the readings that have to do with any of these parts, pins or cavities. */
export function forgetReadings({ job }: PaperJob, names: readonly string[]): void {
  const isAbout = ({ red, black, when }: Reading) =>
    [red, black, ...(when.removed ?? [])].some(
      (one) => names.includes(one) || names.includes(ownerOf(one)),
    );
  for (const machine of job.machines)
    machine.readings = machine.readings.filter((reading) => !isAbout(reading));
}

export const forgetAllReadings = ({ job }: PaperJob): void => {
  for (const machine of job.machines) machine.readings = [];
};
