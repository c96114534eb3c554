export * from "./trial-beside.ts";
export * from "./trial-draft.ts";
export * from "./trial-edits.ts";
export * from "./trial-words.ts";
