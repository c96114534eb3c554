export { isLookedAtAgain } from "./again.ts";
export type * from "./correction.ts";
export type * from "./finding.ts";
export {
  type CheckedSoFar,
  type Checker,
  type CheckResult,
  checkJob,
  createChecker,
  type Summary,
} from "./run.ts";
export { isAbout, isOfOneMachine, isOnSameGrounds } from "./set-aside.ts";
export { withMeter } from "./views/module-views.ts";
