export * from "./geometry.ts";
export * from "./quantity.ts";
export * from "./random.ts";
export * from "./result.ts";
