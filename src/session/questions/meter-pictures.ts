import type { Id, Job } from "../../job/index.ts";
import type { MeterPicture } from "../../sheet/index.ts";
import { analysisOf } from "../analysis.ts";
import { pinRows } from "../pin-rows.ts";

/** What was measured, by the key of the row of the pin table; only of rows where something was. */
export type MeterPictures = ReadonlyMap<string, MeterPicture>;

/** The pictures of one plug's rows, worked out on the spot. */
export function meterPictures(job: Job, machine: Id, plug: Id | null): MeterPictures {
  const readings = job.machines.find(({ id }) => id === machine)?.readings ?? [];
  if (readings.length === 0) return new Map();
  return new Map(
    pinRows(job, machine, plug, analysisOf(job, machine))
      .filter(({ evidence }) => evidence.length > 0)
      .map(({ key, evidence, settledBy, chief, chiefWords }) => [
        key,
        { evidence, settledBy, chief, chiefWords },
      ]),
  );
}
