import { createExplorer } from "../circuit/index.ts";
import type { Id, Job, Machine, PartOf } from "../job/index.ts";
import { judgeReading } from "../readings/index.ts";
import { type PaperRole, type Role, rolesOf } from "../roles/index.ts";
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
  const roles = paper.map((role) => withMeter(job, machine, role));
  const context: CheckContext = {
    job,
    machine,
    network,
    explorer: createExplorer(network, null),
    modules: [...network.parts.values()].filter(
      (part): part is PartOf<"module"> => part.kind === "module",
    ),
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

function withMeter(_job: Job, _machine: Machine, role: PaperRole): Role {
  return { ...role, meterRole: null, meterFits: [], meterVerdict: "unproven" };
}
