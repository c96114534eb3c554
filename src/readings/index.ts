export { batteryUse } from "./as-measured.ts";
export * from "./cautions.ts";
export { type DropsAlong, dropsAlong, whenCurrentFlows } from "./drop-along.ts";
export type { DropLeg, DropRead } from "./drop-legs.ts";
export { expectedAt, expectedAtAll } from "./expected-at.ts";
export { explainReading } from "./explain/explain-reading.ts";
export type { Explanation, FaultSpot } from "./explain/explanation.ts";
export { type OneFault, oneFaultGives } from "./explain/one-fault.ts";
export {
  type CheckName,
  type CheckVerdict,
  judgeCheck,
  lastCheck,
} from "./first-checks.ts";
export { judgeReading } from "./judge-reading.ts";
export { GHOST_SHARE, UNRELATED_OHMS } from "./meter.ts";
export { evidenceOf, type MeterEvidence, meterEvidence } from "./meter-evidence.ts";
export { type MeterProof, meterProof } from "./meter-proof.ts";
export { type Moves, movesOf, partsById, stateMoves } from "./moves.ts";
export { predict } from "./predict.ts";
export type {
  ExpectedReading,
  JudgedReading,
  Prediction,
  ReadingSetup,
  ReadingVerdict,
} from "./prediction.ts";
export { presenceContradicts, type RulesOut, rulesOut } from "./rule-out.ts";
export { type ThingRead, thingRead } from "./same-thing.ts";
export * from "./setup-words.ts";
export { settle, settledCopy } from "./shared.ts";
export { stepsTo, type TrialMoves, trialMoves } from "./trial-moves.ts";
export { type TrialOutcome, type TrialState, trialOutcome } from "./trial-outcome.ts";
