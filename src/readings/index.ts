export { batteryUse } from "./as-measured.ts";
export * from "./cautions.ts";
export { expectedAt, expectedAtAll } from "./expected-at.ts";
export {
  type CheckName,
  type CheckVerdict,
  judgeCheck,
  lastCheck,
} from "./first-checks.ts";
export { judgeReading } from "./judge-reading.ts";
export { type MeterEvidence, meterEvidence } from "./meter-evidence.ts";
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
export { presenceContradicts } from "./presence.ts";
export * from "./setup-words.ts";
export { settle } from "./shared.ts";
export { type TrialMoves, trialMoves } from "./trial-moves.ts";
