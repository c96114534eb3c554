export { isChangedElsewhere } from "./changed-elsewhere.ts";
export type { JobShelf, Upon } from "./job-shelf.ts";
export { memoryJobStore } from "./memory.ts";
export type * from "./port.ts";
export { shelfStore } from "./shelf-store.ts";
export { UnreadableJob } from "./unreadable-job.ts";
