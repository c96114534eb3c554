export * from "./correct.ts";
export * from "./offered.ts";
