import { freeze } from "immer";
import {
  type CheckedSoFar,
  type Checker,
  type CheckResult,
  createChecker,
  type Finding,
} from "../check/index.ts";
import type { Id, Job } from "../job/index.ts";
import type { Role } from "../roles/index.ts";
import { type Change, fromRuns, type Runs, runsFrom, withChanges } from "./analysis-feed.ts";
import { type AnswerTo, answerTo, type Question } from "./questions/question.ts";

/** A result in terms of the one sent before it for the same machine. */
export interface ResultChange {
  readonly machine: Id;
  readonly roles: Runs<Role>;
  readonly findings: Runs<Finding>;
  readonly summary: CheckResult["summary"];
  /** What is being looked at again: see `CheckedSoFar`. */
  readonly again: readonly Id[];
}

/** Checks a job elsewhere and answers for it, fed with the whole of it once and then with what changed. */
export interface AnalysisPort {
  /** Takes a job to begin with and forgets any other. */
  begin(job: Job): Promise<void>;
  /**
   * Takes what changed since, and says how the result for the machine did, readings left to be looked
   * at again.
   */
  check(changes: readonly Change[], machine: Id): Promise<ResultChange>;
  /** Looks at readings again, one small step at a time, and says how the result did; null where it did not yet. */
  goOn(machine: Id): Promise<ResultChange | null>;
  /** Takes what changed since, and answers a question about the machine. */
  answer<Q extends Question>(
    changes: readonly Change[],
    machine: Id,
    question: Q,
  ): Promise<AnswerTo<Q>>;
  stop(): void;
}

/** Opens a port to a place beside the screen; throws where there can't be one. */
export type OpenAnalysis = () => AnalysisPort;

interface Watched {
  readonly checker: Checker;
  sent: Pick<CheckResult, "roles" | "findings">;
}

/** The far side of a port: what answers it, in whatever thread that is. */
export function createAnalysisServer() {
  let job: Job | null = null;
  const watched = new Map<Id, Watched>();
  const withNews = (changes: readonly Change[]): Job => {
    if (!job) throw new Error("asked before it was begun");
    job = freeze(withChanges(job, changes), true);
    return job;
  };
  return {
    begin(whole: Job): void {
      job = freeze(whole, true);
      watched.clear();
    },
    check(changes: readonly Change[], machine: Id): ResultChange {
      const now = withNews(changes);
      const one = watched.get(machine) ?? { checker: createChecker(machine), sent: NOTHING };
      watched.set(machine, one);
      return changeTo(one, one.checker.begin(now));
    },
    goOn(machine: Id): ResultChange | null {
      const one = watched.get(machine);
      const found = one?.checker.goOn();
      return one && found ? changeTo(one, found) : null;
    },
    answer<Q extends Question>(changes: readonly Change[], machine: Id, question: Q): AnswerTo<Q> {
      return answerTo(withNews(changes), machine, question);
    },
  };
}

function changeTo(one: Watched, { result, again }: CheckedSoFar): ResultChange {
  const { sent } = one;
  one.sent = result;
  return {
    machine: result.machine,
    roles: runsFrom(sent.roles, result.roles),
    findings: runsFrom(sent.findings, result.findings),
    summary: result.summary,
    again,
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
