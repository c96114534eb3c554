export * from "./correct.ts";
