export * from "./geometry.ts";
export * from "./in-step.ts";
export * from "./lists.ts";
export * from "./quantity.ts";
export * from "./random.ts";
export * from "./result.ts";
