import { fail, ok, type Result } from "../base/index.ts";
import { JOB_VERSION } from "./schema/job.ts";
import { issue } from "./wording.ts";

export type RawJob = Readonly<Record<string, unknown>>;

/** One step up: what a job of version `from` must become to be one of version `from + 1`. */
export interface Migration {
  readonly from: number;
  /** Must not change its argument; may throw on a job that was never valid in its version. */
  readonly change: (job: RawJob) => RawJob;
}

/** Oldest first, one for each version before the present. Version 1 is the first. */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * Brings a job of an older version up to `current`, step by step. Its `version` must be a whole
 * number from 1 to `current`. A missing step is a programmer's error and throws.
 */
export function migrate(
  job: RawJob,
  migrations: readonly Migration[] = MIGRATIONS,
  current: number = JOB_VERSION,
): Result<RawJob> {
  let now = job;
  for (let version = Number(job.version); version < current; version++) {
    const step = migrations.find((migration) => migration.from === version);
    if (!step) throw new Error(`no migration from version ${version}`);
    try {
      now = { ...step.change(now), version: version + 1 };
    } catch {
      return fail(issue("migration-failed", "", version));
    }
  }
  return ok(now);
}
