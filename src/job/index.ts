export * from "./history.ts";
export * from "./new-job.ts";
export * from "./refs.ts";
export {
  HIGHEST_SYSTEM_VOLTAGE,
  JOB_FORMAT,
  JOB_VERSION,
  jobSchema,
} from "./schema/job.ts";
export { CONTROLS, PART_KINDS, partSchema } from "./schema/parts.ts";
export { ROLE_NAMES } from "./schema/shared.ts";
export type * from "./types.ts";
