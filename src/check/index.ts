export type * from "./finding.ts";
export * from "./run.ts";
