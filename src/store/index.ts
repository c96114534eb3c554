export { isChangedElsewhere } from "./changed-elsewhere.ts";
export { memoryJobStore } from "./memory.ts";
export type * from "./port.ts";
export { UnreadableJob } from "./unreadable-job.ts";
