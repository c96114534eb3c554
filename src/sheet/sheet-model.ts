import { type CheckResult, checkJob, type Finding } from "../check/index.ts";
import { type Id, type Job, type Machine, ownerOf, type Plug, splitRef } from "../job/index.ts";
import { viewFrom } from "../plug/index.ts";
import { USUAL_CAUTIONS, WHO_COMES_FIRST } from "../readings/index.ts";
import { longDay } from "./evidence.ts";
import type { PaperSize, SheetModel, SheetRow, SheetStatement } from "./model.ts";
import { sheetRows } from "./rows.ts";

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
  const about = findingsAbout(job, machine, plug, check.findings);
  const statements = (severity: Finding["severity"]) =>
    about
      .filter((finding) => finding.severity === severity)
      .map((finding) => statementOf(job, plug, finding));
  return {
    size: options.size,
    heading: plug.name ? `Plug ${plug.id} · ${plug.name}` : `Plug ${plug.id}`,
    modules: modulesOf(job, rows),
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
    sideWords: SIDE_WORDS[options.side],
    face: viewFrom(plug, options.side),
    rows,
    sharedSetup: sharedSetup(rows),
    contradictions: statements("contradiction"),
    warnings: statements("warning"),
    standing: standingOf(rows),
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
function modulesOf(job: Job, rows: readonly SheetRow[]): string {
  const ids = new Set(
    rows.flatMap((row) => row.pin.split(", ").filter((pin) => pin !== "")).map(ownerOf),
  );
  return job.diagram.parts
    .filter((part) => ids.has(part.id) && part.kind === "module")
    .map((part) => (part.label ? `${part.id} ${part.label}` : part.id))
    .join(", ");
}

/** Pins and cavities of the plug, the plug itself, and readings taken there. */
function findingsAbout(
  job: Job,
  machine: Machine,
  plug: Plug,
  findings: readonly Finding[],
): Finding[] {
  const isOfPlug = (ref: string) => ownerOf(ref) === plug.id;
  const pins = new Set(job.links.filter((link) => isOfPlug(link.cavity)).map((link) => link.pin));
  const owners = new Set([...pins].map(ownerOf));
  const readings = new Set(
    machine.readings
      .filter(({ red, black }) => [red, black].some((probe) => isOfPlug(probe) || pins.has(probe)))
      .map((reading) => reading.id),
  );
  const concerns = (subject: string) =>
    isOfPlug(subject) || pins.has(subject) || readings.has(subject) || owners.has(subject);
  return findings.filter((finding) => finding.subjects.some(concerns));
}

function statementOf(job: Job, plug: Plug, finding: Finding): SheetStatement {
  const marks = new Set<string>();
  for (const subject of finding.subjects) {
    const cavity =
      ownerOf(subject) === plug.id
        ? subject
        : job.links.find((link) => link.pin === subject && ownerOf(link.cavity) === plug.id)
            ?.cavity;
    if (cavity?.includes(":")) marks.add(splitRef(cavity).name);
  }
  return { marks: [...marks].join(", "), message: finding.message };
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
  if (undecided > 0) parts.push(`${undecided} undecided`);
  return `${parts.join("; ")}.`;
}

/** A phrase that only one row has to share with itself says nothing by being moved. */
function sharedSetup(rows: readonly SheetRow[]): string[] {
  const [first, ...rest] = rows.filter((row) => row.expected !== "");
  if (!first || rest.length === 0) return [];
  return first.expectedSetup.filter((phrase) =>
    rest.every((row) => row.expectedSetup.includes(phrase)),
  );
}
