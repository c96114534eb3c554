export * from "./conditions.ts";
export type { Command } from "./controls.ts";
export { isPlainFeed } from "./controls.ts";
export type { End } from "./ends.ts";
export * from "./explorer.ts";
export { OWN_PIN, positionsOfBits, RELAY, TWO_STATE, type Variable } from "./variables.ts";
export { type Arrival, type Flow, passesCurrent, type Step, type Walk } from "./walk.ts";
