import { freeze } from "immer";
import { type Checker, type CheckResult, createChecker, type Finding } from "../check/index.ts";
import type { Id, Job } from "../job/index.ts";
import type { Role } from "../roles/index.ts";
import { type Change, fromRuns, type Runs, runsFrom, withChanges } from "./analysis-feed.ts";

/** A result in terms of the one sent before it for the same machine. */
export interface ResultChange {
  readonly machine: Id;
  readonly roles: Runs<Role>;
  readonly findings: Runs<Finding>;
  readonly summary: CheckResult["summary"];
}

/** Checks a job elsewhere, fed with the whole of it once and then with what changed. */
export interface AnalysisPort {
  /** Takes a job to begin with and forgets any other. */
  begin(job: Job): Promise<void>;
  /** Takes what changed since, and says how the result for the machine did. */
  check(changes: readonly Change[], machine: Id): Promise<ResultChange>;
  stop(): void;
}

interface Watched {
  readonly checker: Checker;
  sent: Pick<CheckResult, "roles" | "findings">;
}

/** The far side of a port: what answers it, in whatever thread that is. */
export function createAnalysisServer() {
  let job: Job | null = null;
  const watched = new Map<Id, Watched>();
  return {
    begin(whole: Job): void {
      job = freeze(whole, true);
      watched.clear();
    },
    check(changes: readonly Change[], machine: Id): ResultChange {
      if (!job) throw new Error("asked before it was begun");
      job = freeze(withChanges(job, changes), true);
      const one = watched.get(machine) ?? { checker: createChecker(machine), sent: NOTHING };
      watched.set(machine, one);
      const { sent } = one;
      const result = one.checker.check(job);
      one.sent = result;
      return {
        machine: result.machine,
        roles: runsFrom(sent.roles, result.roles),
        findings: runsFrom(sent.findings, result.findings),
        summary: result.summary,
      };
    },
  };
}

const NOTHING: Watched["sent"] = { roles: [], findings: [] };

/** The result that a change makes of the one before it; null for the first of a machine. */
export function resultFrom(before: CheckResult | null, change: ResultChange): CheckResult {
  const { machine, summary } = change;
  return {
    machine,
    roles: fromRuns(before?.roles ?? [], change.roles),
    findings: fromRuns(before?.findings ?? [], change.findings),
    summary,
  };
}
