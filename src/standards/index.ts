export * from "./iec-60757.ts";
