import { type Circuit, circuitOf, LinkedNetwork } from "../circuit/index.ts";
import type { Id, Job, Machine } from "../job/index.ts";
import type { Role } from "../roles/index.ts";
import type { Finding, Severity } from "./finding.ts";
import { Findings } from "./findings.ts";
import { SetAsideMarks } from "./set-aside.ts";
import { Last } from "./views/keep.ts";
import { Lookover, type Now, type Overview } from "./views/overview.ts";

export interface CheckResult {
  readonly machine: Id;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
  /** In a stable order: by severity, by rule, then in the order of the job. */
  readonly findings: readonly Finding[];
  readonly summary: Summary;
}

/** How many findings there are, those set aside left out. */
export interface Summary {
  readonly contradictions: number;
  readonly warnings: number;
  readonly notes: number;
}

const NO_MACHINE: Machine = { id: "", name: "no machine", wires: [], readings: [], trials: [] };

/**
 * Checks one machine of a job time and again while the job is edited. What an edit does not touch is
 * not worked out again: what is known of a module, a load, a part or a plug is kept with all that it
 * was worked out of, and holds while that is the same. So parts of the job that did not change must
 * be the same objects, as they are after an edit through immer, and nothing may be changed in place.
 */
export interface Checker {
  check(job: Job): CheckResult;
  /**
   * Checks all but the readings, which may take long on a large machine: what follows from them
   * stands as it was last, and `goOn` looks at it again.
   */
  begin(job: Job): CheckedSoFar;
  /** Goes on with the job that was begun last, by one small step; null while there is no news. */
  goOn(): CheckedSoFar | null;
}

/** What is known of a job before all is. */
export interface CheckedSoFar {
  readonly result: CheckResult;
  /**
   * Ids of the readings that are being looked at again, and of plugs where cavities may have been
   * mistaken; empty where the result is whole. See `isLookedAtAgain`.
   */
  readonly again: readonly Id[];
}

/** A checker for the machine of this id; of a job without it the diagram alone is checked. */
export function createChecker(machineId: Id): Checker {
  const network = new LinkedNetwork();
  const lookover = new Lookover();
  const findings = new Findings();
  const marks = new SetAsideMarks();
  const circuit = new Last<Circuit>();
  const result = new Last<CheckResult>();
  let begun: Now | null = null;
  const take = (job: Job): Now => {
    const machine = job.machines.find((one) => one.id === machineId) ?? NO_MACHINE;
    const { parts, wires } = job.diagram;
    const now = circuit.of([parts, wires, machine.changes], () => circuitOf(job, machine.id));
    network.update(now, job.systemVoltage);
    return { job, machine, circuit: now, network };
  };
  const told = ({ job, machine }: Now, { views, roles }: Overview): CheckResult => {
    const found = marks.on(findings.of(views), job, machine.id);
    return result.of([roles, ...found], () => ({
      machine: machine.id,
      roles,
      findings: found,
      summary: summaryOf(found),
    }));
  };
  const soFar = (now: Now): CheckedSoFar => {
    const overview = lookover.soFar(now);
    begun = overview.again.length > 0 ? now : null;
    return { result: told(now, overview), again: overview.again };
  };
  return {
    check(job) {
      begun = null;
      const now = take(job);
      return told(now, lookover.over(now));
    },
    begin: (job) => soFar(take(job)),
    goOn: () => (begun && lookover.step(begun) ? soFar(begun) : null),
  };
}

/** Works out the role of every module pin and everything worth telling, for one machine of a job. */
export const checkJob = (job: Job, machine: Id): CheckResult => createChecker(machine).check(job);

function summaryOf(findings: readonly Finding[]): Summary {
  const count = (severity: Severity) =>
    findings.filter((one) => one.severity === severity && one.setAside === undefined).length;
  return {
    contradictions: count("contradiction"),
    warnings: count("warning"),
    notes: count("note"),
  };
}
