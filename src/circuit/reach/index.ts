export * from "./conditions.ts";
export type { Command } from "./controls.ts";
export type { End } from "./ends.ts";
export * from "./explorer.ts";
export { OWN_PIN, positionsOfBits, RELAY } from "./variables.ts";
export type { Arrival, Flow, Step, Walk } from "./walk.ts";
