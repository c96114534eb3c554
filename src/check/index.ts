export type * from "./correction.ts";
export type * from "./finding.ts";
export { type Checker, type CheckResult, checkJob, createChecker, type Summary } from "./run.ts";
export { isAbout, isOfOneMachine, isOnSameGrounds } from "./set-aside.ts";
