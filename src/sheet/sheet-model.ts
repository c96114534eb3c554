import { type CheckResult, checkJob } from "../check/index.ts";
import { type Circuit, circuitOf } from "../circuit/index.ts";
import { type Id, type Job, type Machine, ownerOf, type Plug } from "../job/index.ts";
import { NEUTRAL_PLACES_NOTE, plugTitle, viewFrom } from "../plug/index.ts";
import { meterProof, USUAL_CAUTIONS, WHO_COMES_FIRST } from "../readings/index.ts";
import { longDay } from "./evidence.ts";
import type { PaperSize, SheetModel, SheetRow } from "./model.ts";
import { sheetRows } from "./rows.ts";
import { statementsOf } from "./statements.ts";
import { PLUGGED_IN } from "./text.ts";

export interface SheetOptions {
  readonly side: "mating" | "wire";
  readonly size: PaperSize;
  /** ISO 8601 date, printed in words. */
  readonly date: string;
  readonly revision: string;
  readonly preparedBy?: string;
  /** The plug to print; the first one when absent. */
  readonly plug?: Id;
  /** Roles and findings already worked out for this very job and machine. */
  readonly check?: CheckResult;
}

const SIDE_WORDS = {
  wire: "Seen from the wire side, where the wires go in",
  mating: "Seen from the mating side, the face that meets the other half",
} as const;

/** The pinout sheet of one plug on one machine. Throws when the job has no such plug or machine. */
export function sheetModel(job: Job, machineId: Id, options: SheetOptions): SheetModel {
  const machine = job.machines.find((one) => one.id === machineId);
  if (!machine) throw new Error(`no machine "${machineId}" in this job`);
  const plug = plugOf(job, options.plug);
  const check = options.check ?? checkJob(job, machineId);
  const rows = sheetRows(job, machine, plug, check);
  return {
    size: options.size,
    heading: `Plug ${plugTitle(plug)}`,
    modules: modulesOf(circuitOf(job, machineId), rows),
    job: job.title,
    systemVoltage: job.systemVoltage,
    machine: {
      name: machine.name,
      serial: machine.serial ?? null,
      hours: machine.hours ?? null,
    },
    date: longDay(options.date),
    revision: options.revision,
    preparedBy: options.preparedBy ?? "",
    side: options.side,
    sideWords: plug.neutral
      ? `${SIDE_WORDS[options.side]}. ${NEUTRAL_PLACES_NOTE}`
      : SIDE_WORDS[options.side],
    face: viewFrom(plug, options.side),
    rows,
    sharedSetup: sharedSetup(rows),
    ...statementsOf(job, machine, plug, check.findings, check.roles),
    standing: [standingOf(rows), ...proofNote(machine, job.systemVoltage)].join(" "),
    cautions: USUAL_CAUTIONS,
    whoComesFirst: WHO_COMES_FIRST,
  };
}

function plugOf(job: Job, id: Id | undefined): Plug {
  const plug = id === undefined ? job.plugs[0] : job.plugs.find((one) => one.id === id);
  if (!plug) throw new Error(id === undefined ? "this job has no plug" : `no plug "${id}"`);
  return plug;
}

/** `A1 Water pump hold`; several joined by a comma. */
function modulesOf({ parts }: Circuit, rows: readonly SheetRow[]): string {
  const ids = new Set(
    rows.flatMap((row) => row.pin.split(", ").filter((pin) => pin !== "")).map(ownerOf),
  );
  return parts
    .filter((part) => ids.has(part.id) && part.kind === "module")
    .map((part) => (part.label ? `${part.id} ${part.label}` : part.id))
    .join(", ");
}

function standingOf(rows: readonly SheetRow[]): string {
  const wired = rows.filter((row) => row.state === "wired");
  const count = (test: (row: SheetRow) => boolean) => wired.filter(test).length;
  const proved = count((row) => row.proved);
  const undecided = count((row) => row.verdict === "undecided");
  const parts = [
    `${rows.length} cavities, ${wired.length} in use`,
    `${count((row) => row.wrong)} printed wrong`,
    `${proved} confirmed by a reading, ${wired.length - proved} not`,
  ];
  const adopted = count((row) => row.adopted);
  if (adopted > 0) parts.push(`${adopted} adopted from the circuit`);
  if (undecided > 0) parts.push(`${undecided} undecided`);
  return `${parts.join("; ")}.`;
}

/** Whether a proved meter stands behind the readings, once anybody has made a first check. */
const proofNote = (machine: Machine, systemVoltage: number): string[] =>
  machine.firstChecks?.length && machine.readings.length > 0
    ? [meterProof(machine, systemVoltage).sentence]
    : [];

/**
 * A phrase that only one row has to share with itself says nothing by being moved. What was measured
 * must share it too, or say the contrary itself, as of a module that was plugged in.
 */
function sharedSetup(rows: readonly SheetRow[]): string[] {
  const [first, ...rest] = rows.filter((row) => row.expected !== "");
  if (!first || rest.length === 0) return [];
  const taken = rows.filter((row) => row.evidenceSetup.length > 0);
  const isTrueOf = (phrase: string, setup: readonly string[] | string) =>
    setup.includes(phrase) || setup.includes(phrase.replace(/ unplugged$/, ` ${PLUGGED_IN}`));
  const named = rows.flatMap((row) => row.evidenceBesides).filter((line) => line.startsWith("!"));
  return first.expectedSetup.filter(
    (phrase) =>
      rest.every((row) => row.expectedSetup.includes(phrase)) &&
      taken.every((row) => isTrueOf(phrase, row.evidenceSetup)) &&
      named.every((line) => isTrueOf(phrase, line)),
  );
}
