export * from "./history.ts";
export { imageFilesOf, imageNames, renameImages, safeFile } from "./images.ts";
export { pathText } from "./json-guard.ts";
export * from "./json-schema.ts";
export * from "./mend.ts";
export * from "./new-job.ts";
export * from "./picture.ts";
export { pinIdsOf } from "./pins.ts";
export * from "./read.ts";
export * from "./refs.ts";
export {
  ENGINE_STATES,
  FIRST_CHECKS,
  HIGHEST_SYSTEM_VOLTAGE,
  JOB_FORMAT,
  JOB_VERSION,
  jobSchema,
  whenSchema,
} from "./schema/job.ts";
export { CONTROLS, PART_KINDS, partSchema } from "./schema/parts.ts";
export { LARGEST_NUMBER, ROLE_NAMES, SMALLEST_NUMBER } from "./schema/shared.ts";
export type * from "./types.ts";
export { referenceIssues } from "./validate.ts";
export { writeJobText, writePintruth } from "./write.ts";
export { crc32 } from "./zip.ts";
