export * from "./change-edits.ts";
export * from "./change-list.ts";
export * from "./drawn-job.ts";
export { homesOf } from "./homes.ts";
export * from "./recording.ts";
export * from "./replace-here.ts";
