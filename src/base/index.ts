export * from "./geometry.ts";
export * from "./lists.ts";
export * from "./quantity.ts";
export * from "./random.ts";
export * from "./result.ts";
