import { cavityRef, type Job, type Machine } from "../../job/index.ts";
import {
  expectedAt,
  judgeReading,
  wordsForPrediction,
  wordsForSetup,
} from "../../readings/index.ts";
import { cautionLines } from "../format/cautions.ts";
import { plain } from "../format/plain.ts";
import { table } from "../format/table.ts";
import { EXIT } from "../io.ts";
import { complaint, machinesOf, readJob } from "../job-input.ts";
import type { Command } from "./command.ts";

/** The readings that were taken, each with what it should have been. */
const taken = (job: Job, machine: Machine) =>
  machine.readings.map((reading) => {
    const { id, ...judged } = judgeReading(job, machine.id, reading);
    return { id, machine: machine.id, ...judged };
  });

/** The readings worth taking at each cavity. */
const expected = (job: Job, machine: Machine) =>
  job.plugs.flatMap((plug) =>
    plug.cavities.flatMap((cavity) => {
      const ref = cavityRef(plug.id, cavity.mark);
      return expectedAt(job, machine.id, ref).map(({ setup, proves, ...prediction }) => ({
        machine: machine.id,
        cavity: ref,
        ...setup,
        ...prediction,
        proves,
      }));
    }),
  );

function machineText(file: string, job: Job, machine: Machine): string {
  const readings = taken(job, machine).map((judged, n) => {
    const reading = machine.readings[n];
    if (!reading) return [];
    const should = judged.invalid ?? wordsForPrediction(judged, reading.quantity);
    return [judged.id, wordsForSetup(job, reading), String(reading.value), should, judged.verdict];
  });
  const cavities = expected(job, machine).map((one) => [
    one.cavity,
    wordsForSetup(job, one),
    wordsForPrediction(one, one.quantity),
    one.proves,
  ]);
  return [
    plain(`${file}: machine ${machine.id}, ${machine.name}`),
    "",
    ...table(["reading", "what", "read", "should be", "verdict"], plainRows(readings)),
    "",
    ...table(["cavity", "reading to take", "should be", "what it proves"], plainRows(cavities)),
    "",
    ...cautionLines(),
    "",
  ].join("\n");
}

const plainRows = (rows: readonly (readonly string[])[]) => rows.map((row) => row.map(plain));

export const predict: Command = {
  name: "predict",
  takes: "JOB",
  does: "what each reading should be, and which to take where",
  files: "one",
  options: ["json", "machine"],
  needs: [],
  async run(call, io) {
    const file = call.files[0] ?? "";
    const read = await readJob(file, { pictures: false });
    const machines = read.ok ? machinesOf(read.value.job, call.value("machine")) : read;
    if (!read.ok || !machines.ok) {
      io.err(complaint(file, machines.ok ? [] : machines.issues));
      return EXIT.bad;
    }
    const { job } = read.value;
    if (call.json) {
      const readings = machines.value.flatMap((machine) => taken(job, machine));
      const cavities = machines.value.flatMap((machine) => expected(job, machine));
      io.out(`${JSON.stringify({ file, readings, cavities })}\n`);
    } else for (const machine of machines.value) io.out(`${machineText(file, job, machine)}\n`);
    return EXIT.done;
  },
};
