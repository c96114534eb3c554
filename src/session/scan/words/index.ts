export * from "./read-word.ts";
export * from "./word-desk.ts";
export { isSure, type WordDecision, type WordItem, type WordTarget } from "./word-items.ts";
export * from "./word-meaning.ts";
