export * from "./analysis.ts";
export * from "./session.ts";
export type * from "./state.ts";
