import type { Finding } from "../check/index.ts";
import { type Circuit, circuitOf } from "../circuit/index.ts";
import { type Id, type Job, type Machine, ownerOf, type Plug, splitRef } from "../job/index.ts";
import type { Role } from "../roles/index.ts";
import type { SheetModel, SheetStatement } from "./model.ts";

/** More marks than this before a statement are counted. */
const MOST_MARKS = 8;

/** The findings of a job that belong on the sheet of one plug, and how many do not. */
export function statementsOf(
  job: Job,
  machine: Machine,
  plug: Plug,
  findings: readonly Finding[],
  roles: readonly Role[],
): Pick<SheetModel, "contradictions" | "warnings" | "setAside" | "unshown"> {
  const readings = new Set(machine.readings.map((reading) => reading.id));
  const paths = pathsOf(circuitOf(job, machine.id), plug, roles);
  const concerns = concernsPlug(job, machine, plug);
  const isAbout = ({ subjects }: Finding) =>
    subjects.some(concerns) || marksOnPath(paths, subjects).length > 0;
  const aside = findings.filter((finding) => finding.setAside !== undefined);
  const asideHere = aside.filter(isAbout);
  const counting = findings.filter((finding) => finding.setAside === undefined);
  const about = counting.filter(isAbout);
  const withSeverity = (severity: Finding["severity"]) =>
    about.filter((finding) => finding.severity === severity);
  const statement = (finding: Finding) => statementOf(job, plug, paths, finding);
  // What a meter found locates the fault, and comes before what the drawing alone tells.
  const measured = ({ subjects: [chief] }: Finding) => chief !== undefined && readings.has(chief);
  const warnings = withSeverity("warning");
  return {
    contradictions: withSeverity("contradiction").map(statement),
    warnings: [
      ...warnings.filter(measured),
      ...warnings.filter((finding) => !measured(finding)),
    ].map(statement),
    setAside: {
      here: asideHere.map((one) => ({ ...statement(one), reason: one.setAside ?? "" })),
      elsewhere: aside.length - asideHere.length,
    },
    unshown: {
      notes: withSeverity("note").length,
      elsewhere: counting.length - about.length,
    },
  };
}

/** Pins and cavities of the plug, the plug itself, its modules, and readings taken there. */
function concernsPlug(job: Job, machine: Machine, plug: Plug): (subject: string) => boolean {
  const isOfPlug = (ref: string) => ownerOf(ref) === plug.id;
  const pins = new Set(job.links.filter((link) => isOfPlug(link.cavity)).map((link) => link.pin));
  const owners = new Set([...pins].map(ownerOf));
  const readings = new Set(
    machine.readings
      .filter(({ red, black }) => [red, black].some((probe) => isOfPlug(probe) || pins.has(probe)))
      .map((reading) => reading.id),
  );
  return (subject) =>
    isOfPlug(subject) || pins.has(subject) || readings.has(subject) || owners.has(subject);
}

/** Mark of a cavity to the parts and wires that its line runs through, modules left out. */
type Paths = ReadonlyMap<string, ReadonlySet<Id>>;

function pathsOf({ parts }: Circuit, plug: Plug, roles: readonly Role[]): Paths {
  const modules = new Set(parts.filter((part) => part.kind === "module").map((part) => part.id));
  const paths = new Map<string, Set<Id>>();
  for (const { cavity, because } of roles) {
    if (cavity === null || ownerOf(cavity) !== plug.id) continue;
    // What is found at another module on a line is about that module, not about the line.
    paths.set(splitRef(cavity).name, new Set(because.filter((id) => !modules.has(id))));
  }
  return paths;
}

function marksOnPath(paths: Paths, subjects: readonly string[]): string[] {
  const isOn = (path: ReadonlySet<Id>) =>
    subjects.some((subject) => path.has(subject) || path.has(ownerOf(subject)));
  return [...paths].filter(([, path]) => isOn(path)).map(([mark]) => mark);
}

function statementOf(job: Job, plug: Plug, paths: Paths, finding: Finding): SheetStatement {
  const direct = new Set<string>();
  for (const subject of finding.subjects) {
    const cavity =
      ownerOf(subject) === plug.id
        ? subject
        : job.links.find((link) => link.pin === subject && ownerOf(link.cavity) === plug.id)
            ?.cavity;
    if (cavity?.includes(":")) direct.add(splitRef(cavity).name);
  }
  const marks = direct.size > 0 ? [...direct] : marksOnPath(paths, finding.subjects);
  return {
    marks: marks.length > MOST_MARKS ? `${marks.length} cavities` : marks.join(", "),
    message: finding.message,
  };
}
