export * from "./cautions.ts";
export { comesOn } from "./comes-on.ts";
export { expectedAt } from "./expected-at.ts";
export { judgeReading } from "./judge-reading.ts";
export { type MeterEvidence, meterEvidence } from "./meter-evidence.ts";
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
