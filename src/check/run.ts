import { createExplorer } from "../circuit/index.ts";
import {
  type Id,
  type Job,
  type Machine,
  type PartOf,
  type PinRef,
  pinRef,
  ROLE_NAMES,
} from "../job/index.ts";
import { judgeReading, meterEvidence } from "../readings/index.ts";
import {
  judgeWord,
  type PaperRole,
  type PrintedWord,
  printedWord,
  type Role,
  rolesOf,
} from "../roles/index.ts";
import type { Finding, Severity } from "./finding.ts";
import type { CheckContext } from "./rule.ts";
import { RULES } from "./rules/index.ts";

export interface CheckResult {
  readonly machine: Id;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
  /** In a stable order: by severity, by rule, then as the rule found them. */
  readonly findings: readonly Finding[];
  readonly summary: Summary;
}

export interface Summary {
  readonly contradictions: number;
  readonly warnings: number;
  readonly notes: number;
}

const NO_MACHINE: Machine = { id: "", name: "no machine", wires: [], readings: [], trials: [] };

/** Works out the role of every module pin and everything worth telling, for one machine of a job. */
export function checkJob(job: Job, machineId: Id): CheckResult {
  const machine = job.machines.find((one) => one.id === machineId) ?? NO_MACHINE;
  const { network, roles: paper } = rolesOf(job, machine.id);
  const modules = [...network.parts.values()].filter(
    (part): part is PartOf<"module"> => part.kind === "module",
  );
  const words = new Map(
    modules.flatMap((module) =>
      module.pins.map((pin) => [pinRef(module.id, pin.id), printedWord(pin, job.words)] as const),
    ),
  );
  const roles = paper.map((role) => withMeter(job, machine, words, role));
  const context: CheckContext = {
    job,
    machine,
    network,
    explorer: createExplorer(network, null),
    modules,
    roles,
    readings: machine.readings.map((reading) => ({
      reading,
      judged: judgeReading(job, machine.id, reading),
    })),
  };
  const findings = RULES.flatMap(({ id, severity, find }) =>
    find(context).map((found): Finding => ({ rule: id, severity, ...found })),
  );
  const count = (severity: Severity) =>
    findings.filter((finding) => finding.severity === severity).length;
  return {
    machine: machine.id,
    roles,
    findings,
    summary: {
      contradictions: count("contradiction"),
      warnings: count("warning"),
      notes: count("note"),
    },
  };
}

/** Sets what the meter proved beside what paper and circuit say; it never changes their verdict. */
function withMeter(
  job: Job,
  machine: Machine,
  taught: ReadonlyMap<PinRef, PrintedWord>,
  role: PaperRole,
): Role {
  const evidence = role.cavity === null ? null : meterEvidence(job, machine.id, role.cavity);
  const word = taught.get(role.pin);
  if (!evidence || evidence.confirmedBy.length === 0 || !word)
    return { ...role, meterRole: null, meterFits: ROLE_NAMES, meterVerdict: "unproven" };
  const { fits } = evidence;
  const [only] = fits;
  return {
    ...role,
    meterRole: fits.length === 1 && only ? only : null,
    meterFits: fits,
    meterVerdict: judgeWord(word, fits, null).verdict,
  };
}
