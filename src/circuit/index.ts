export * from "./kinds/index.ts";
export * from "./machine-circuit.ts";
export * from "./nets.ts";
export * from "./places.ts";
export * from "./reach/index.ts";
export * from "./solve/index.ts";
