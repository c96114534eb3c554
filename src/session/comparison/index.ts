export { compareMachines } from "./compare-machines.ts";
export * from "./comparison.ts";
export { comparisonCsv } from "./comparison-csv.ts";
export * from "./comparison-words.ts";
