export * from "./cavity-facts.ts";
export * from "./csv.ts";
export * from "./evidence.ts";
export * from "./fonts.ts";
export type * from "./model.ts";
export * from "./render.ts";
export * from "./sheet-model.ts";
