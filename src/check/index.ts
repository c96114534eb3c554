export type * from "./finding.ts";
export { type Checker, type CheckResult, checkJob, createChecker, type Summary } from "./run.ts";
