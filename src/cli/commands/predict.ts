import { cavityRef, type Id, type Job } from "../../job/index.ts";
import { expectedAt, judgeReading } from "../../readings/index.ts";
import { type Call, type Io, machinesOf, readJob } from "../call.ts";
import { predictionInWords } from "../format/prediction-words.ts";
import { complain, type Status } from "../status.ts";

/** What the readings of one machine should have been, and what each cavity should show. */
export function predictionOf(job: Job, machine: Id) {
  const readings = (job.machines.find((one) => one.id === machine)?.readings ?? []).map(
    (reading) => {
      const { predicted, low, high, floating, verdict } = judgeReading(job, machine, reading);
      return { id: reading.id, machine, predicted, low, high, floating, verdict };
    },
  );
  const cavities = job.plugs.flatMap((plug) =>
    plug.cavities.flatMap(({ mark }) => {
      const cavity = cavityRef(plug.id, mark);
      return expectedAt(job, machine, cavity).map(
        ({ setup: { quantity, red, black, when, with: tool }, predicted, low, high, proves }) => ({
          cavity,
          quantity,
          red,
          black,
          when,
          ...(tool === undefined ? {} : { with: tool }),
          predicted,
          low,
          high,
          proves,
        }),
      );
    }),
  );
  return { readings, cavities };
}

export async function predict(call: Call, io: Io): Promise<Status> {
  for (const file of call.files) {
    const job = await readJob(file);
    if (!job.ok) return complain(io, file, job.issues);
    const machines = machinesOf(job.value, call.machine);
    if (!machines.ok) return complain(io, file, machines.issues);
    for (const machine of machines.value) {
      const prediction = predictionOf(job.value, machine);
      io.out(
        call.json
          ? `${JSON.stringify({ file, machine, ...prediction })}\n`
          : predictionInWords(file, machine, prediction),
      );
    }
  }
  return 0;
}
