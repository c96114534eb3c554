export * from "./kinds/index.ts";
