import { z } from "zod";
import { JOB_FORMAT, JOB_VERSION, jobSchema } from "./schema/job.ts";

/** The JSON Schema (draft 2020-12) of a job file, made from the schema that reading uses. */
export const jobJsonSchema = (): Readonly<Record<string, unknown>> => ({
  title: `${JOB_FORMAT} version ${JOB_VERSION}`,
  description:
    "A Pintruth job. Fields that this schema does not name are kept. Beyond it, ids are unique across the whole job and every reference names something that is there: see job-format.md.",
  ...z.toJSONSchema(jobSchema),
});
