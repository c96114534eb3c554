import { keptOf } from "../base/index.ts";
import type { CheckResult } from "../check/index.ts";
import {
  type CavityRef,
  type Colour,
  type Id,
  type Job,
  type Machine,
  ownerOf,
  type Part,
  type PinRef,
  pinRef,
  splitRef,
  type Wire,
} from "../job/index.ts";
import {
  type Role,
  repeatsMark,
  type Verdict,
  wordsForCircuit,
  wordsForRole,
} from "../roles/index.ts";
import {
  type CavityFacts,
  type CavityState,
  cavityFacts,
  cavityState,
  type MeterPicture,
  meterPicture,
  rolesByPin,
  type WireFact,
  wiresAtPins,
} from "../sheet/index.ts";
import { sameColour } from "../standards/index.ts";
import { drawnJob } from "./changes/drawn-job.ts";

/** One row of the pin table: a cavity of the plug at hand, or a pin that has no cavity. */
export interface PinRow extends MeterPicture {
  /** Stays the same while the row is the same cavity or pin. */
  readonly key: string;
  /** What a tap on the row selects: the cavity, else the pin. */
  readonly ref: CavityRef | PinRef;
  readonly cavity: CavityRef | null;
  /** Empty for a pin without a cavity. */
  readonly mark: string;
  readonly state: CavityState | "no-cavity";
  readonly pins: readonly PinRef[];
  /** The printed word; null where no module pin is tied. */
  readonly printed: string | null;
  /** What the printed word means, e.g. `output`; empty where it means nothing known. */
  readonly printedMeans: string;
  /** There is a word, nobody knows it, and it is no number that repeats the pin's own. */
  readonly asksWord: boolean;
  /** What the circuit says, e.g. `ground`; empty where no module pin is tied. */
  readonly circuit: string;
  readonly role: Role | null;
  readonly verdict: Verdict | null;
  /** What was measured here is being judged: until then the picture is empty. */
  readonly meterWaits: boolean;
  /** The meter's own verdict, which never changes the other one. */
  readonly meterVerdict: Verdict | null;
  readonly colour: WireFact<Colour>;
  readonly colourDiffers: boolean;
  readonly number: WireFact<string>;
  readonly numberDiffers: boolean;
  /** Square millimetres. */
  readonly mm2: WireFact<number>;
}

/** What was measured, by the keys of rows. */
type Pictures = ReadonlyMap<string, MeterPicture>;

/**
 * Rows of the pin table for one plug and one machine: its cavities in their order, then the pins
 * of its modules that have no cavity anywhere, so that nothing is hidden. Without a plug: all pins.
 * What was measured is judged on the spot, unless `pictures` are handed in: then a row whose readings
 * are not those of its picture waits.
 */
export function pinRows(
  job: Job,
  machineId: Id,
  plugId: Id | null,
  analysis: CheckResult,
  pictures: Pictures | null = null,
): readonly PinRow[] {
  const machine = job.machines.find((one) => one.id === machineId);
  if (!machine) return [];
  const plug = job.plugs.find((one) => one.id === plugId);
  const facts = plug ? cavityFacts(job, machine, plug, analysis) : [];
  const pictureOf: PictureOf = (key, one) =>
    pictures ? knownPicture(pictures.get(key), one) : meterPicture(job, machine.id, one);
  const rows = facts.map((one, index) => cavityRow(`${one.ref}#${index}`, one, pictureOf));
  return [...rows, ...loosePinRows(job, machine, plug?.id ?? null, analysis, pictureOf)];
}

/** Null while what was measured is being judged. */
type PictureOf = (key: string, facts: CavityFacts) => MeterPicture | null;

const NO_PICTURE: MeterPicture = { evidence: [], settledBy: null, chief: null, chiefWords: "" };

/** The picture as far as it is of these very readings. */
function knownPicture(
  known: MeterPicture | undefined,
  { readings }: CavityFacts,
): MeterPicture | null {
  if (readings.length === 0) return NO_PICTURE;
  const judged = known?.evidence.map(({ reading }) => reading).reverse();
  return known && JSON.stringify(judged) === JSON.stringify(readings) ? known : null;
}

function cavityRow(key: string, facts: CavityFacts, pictureOf: PictureOf): PinRow {
  const picture = pictureOf(key, facts);
  return {
    key,
    ref: facts.ref,
    cavity: facts.ref,
    mark: facts.cavity.mark,
    state: cavityState(facts),
    pins: facts.pins,
    ...roleColumns(facts.role),
    printed: facts.role ? (facts.role.printed ?? "") : null,
    ...(picture ?? NO_PICTURE),
    meterWaits: picture === null,
    ...wireColumns(facts.colour, facts.number, facts.mm2),
  };
}

function roleColumns(role: Role | null) {
  const means = role?.printedRole;
  return {
    role,
    printedMeans: means && means !== "unrecognised" ? wordsForRole(means) : "",
    asksWord: role?.printedRole === "unrecognised" && !repeatsMark(asPin(role)),
    circuit: role ? wordsForCircuit(role) : "",
    verdict: role?.verdict ?? null,
    meterVerdict: role?.meterVerdict ?? null,
  };
}

const asPin = ({ pin, printed }: Role) => ({ id: splitRef(pin).name, printed: printed ?? "" });

function wireColumns(colour: WireFact<Colour>, number: WireFact<string>, mm2: WireFact<number>) {
  const both = <T>({ onMachine, onDiagram }: WireFact<T>, differ: (a: T, b: T) => boolean) =>
    onMachine !== null && onDiagram !== null && differ(onMachine, onDiagram);
  return {
    colour,
    colourDiffers: both(colour, (a, b) => !sameColour(a, b)),
    number,
    numberDiffers: both(number, (a, b) => a.trim() !== b.trim()),
    mm2,
  };
}

function loosePinRows(
  job: Job,
  machine: Machine,
  plug: Id | null,
  analysis: CheckResult,
  pictureOf: PictureOf,
): PinRow[] {
  const tied = tiedPins(job.links);
  const loose = modulesOfPlug(drawnJob(job, machine.id), plug).flatMap((module) =>
    module.pins.map((pin) => pinRef(module.id, pin.id)).filter((ref) => !tied.has(ref)),
  );
  if (loose.length === 0) return [];
  const wires = wiresAtPins(job, machine.id, new Set(loose));
  const roles = rolesByPin(analysis.roles);
  return loose.map((ref) =>
    loosePinRow(job, machine, ref, roles.get(ref) ?? null, wires.get(ref) ?? [], pictureOf),
  );
}

const tiedPins = keptOf((links: Job["links"]) => new Set(links.map(({ pin }) => pin)));

type Module = Extract<Part, { kind: "module" }>;

/** Modules with a pin in the plug; where it has none yet, those with no pin in any plug. */
function modulesOfPlug(job: Job, plug: Id | null): Module[] {
  const modules = job.diagram.parts.filter((part): part is Module => part.kind === "module");
  const ownersIn = (links: Job["links"]) => new Set(links.map((link) => ownerOf(link.pin)));
  const here = ownersIn(job.links.filter((link) => ownerOf(link.cavity) === plug));
  const ofPlug = modules.filter((module) => here.has(module.id));
  if (ofPlug.length > 0) return ofPlug;
  const anywhere = ownersIn(job.links);
  return modules.filter((module) => !anywhere.has(module.id));
}

function loosePinRow(
  job: Job,
  machine: Machine,
  ref: PinRef,
  role: Role | null,
  wires: readonly Wire[],
  pictureOf: PictureOf,
): PinRow {
  const facts: CavityFacts = {
    ref,
    cavity: { mark: "", at: [0, 0] },
    pins: [ref],
    role,
    machineWire: null,
    diagramWires: wires,
    colour: { onMachine: null, onDiagram: wires.find((wire) => wire.colour)?.colour ?? null },
    number: { onMachine: null, onDiagram: wires.find((wire) => wire.number)?.number ?? null },
    mm2: { onMachine: null, onDiagram: wires.find((wire) => wire.mm2)?.mm2 ?? null },
    readings: machine.readings.filter(({ red, black }) => red === ref || black === ref),
  };
  return {
    ...cavityRow(ref, facts, pictureOf),
    cavity: null,
    state: "no-cavity",
    printed: role?.printed ?? printedOn(drawnJob(job, machine.id), ref),
  };
}

/** The printed word as the diagram has it, for a pin that the check has no role for yet. */
function printedOn(job: Job, ref: PinRef): string {
  const { owner, name } = splitRef(ref);
  const part = job.diagram.parts.find((one) => one.id === owner);
  if (part?.kind !== "module") return "";
  return part.pins.find((pin) => pin.id === name)?.printed ?? "";
}

/** Puts another printed word beside a module's pin, in a draft; no word at all takes it away. */
export function setPrinted(draft: Job, ref: PinRef, printed: string): void {
  const { owner, name } = splitRef(ref);
  const part = draft.diagram.parts.find((one) => one.id === owner);
  if (part?.kind !== "module") return;
  const pin = part.pins.find((one) => one.id === name);
  if (!pin) return;
  if (printed === "") delete pin.printed;
  else pin.printed = printed;
}
