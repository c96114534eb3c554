import type { Job, Machine } from "../../job/index.ts";
import {
  expectedAtAll,
  judgeReading,
  type Moves,
  movesOf,
  phrasesForWhen,
  type ReadingSetup,
  trialMoves,
  wordsForPrediction,
  wordsForSetup,
} from "../../readings/index.ts";
import { cautionLines } from "../format/cautions.ts";
import { plain, WIDTH, wrapped } from "../format/plain.ts";
import { table } from "../format/table.ts";
import { EXIT } from "../io.ts";
import { complaint, readWithMachines } from "../job-input.ts";
import type { Command } from "./command.ts";

type Moved = Pick<Moves, "moves" | "stateMoves">;

/** What comes on because of the instrument, and because of the state; both empty where none can say. */
function moved(job: Job, machine: Machine, setup: ReadingSetup): Moved {
  const { moves, stateMoves } = movesOf(job, machine.id, setup) ?? { moves: [], stateMoves: [] };
  return { moves, stateMoves };
}

/** The readings that were taken, each with what it should have been. */
const taken = (job: Job, machine: Machine) =>
  machine.readings.map((reading) => {
    const { id, ...judged } = judgeReading(job, machine.id, reading);
    return { id, machine: machine.id, ...judged, ...moved(job, machine, reading) };
  });

/** The readings worth taking at each cavity. */
const expected = (job: Job, machine: Machine) =>
  [...expectedAtAll(job, machine.id)].flatMap(([cavity, readings]) =>
    readings.map(({ setup, proves, ...prediction }) => ({
      machine: machine.id,
      cavity,
      ...setup,
      ...prediction,
      proves,
      ...moved(job, machine, setup),
    })),
  );

/** The trials that were made, each with what its state brings on of a machine that is as drawn. */
const tried = (job: Job, machine: Machine) =>
  machine.trials.map(({ id, when }) => ({
    id,
    machine: machine.id,
    when,
    ...(trialMoves(job, machine.id, when) ?? { stateMoves: [], mayMove: [] }),
  }));

function machineText(file: string, job: Job, machine: Machine): string {
  const done = taken(job, machine);
  const readings = done.map((judged, n) => {
    const reading = machine.readings[n];
    if (!reading) return [];
    const should = judged.invalid ?? wordsForPrediction(judged, reading.quantity);
    return [judged.id, wordsForSetup(job, reading), String(reading.value), should, judged.verdict];
  });
  const offers = expected(job, machine);
  const cavities = offers.map((one) => [
    one.cavity,
    wordsForSetup(job, one),
    wordsForPrediction(one, one.quantity),
    one.proves,
    movesInWords(one),
  ]);
  const trials = tried(job, machine).map(({ id, when, stateMoves, mayMove }) => [
    id,
    phrasesForWhen(job, when).join(", "),
    [...stateMoves, ...mayMove.map((part) => `perhaps ${part}`)].join(", "),
  ]);
  const minds = [
    ...done.map(({ id, caution }) => ({ of: id, caution })),
    ...offers.map(({ cavity, caution }) => ({ of: cavity, caution })),
  ];
  return [
    plain(`${file}: machine ${machine.id}, ${machine.name}`),
    "",
    ...table(["reading", "what", "read", "should be", "verdict"], plainRows(readings)),
    "",
    ...table(
      ["cavity", "reading to take", "should be", "what it proves", "what will move or come on"],
      plainRows(cavities),
    ),
    "",
    ...(trials.length > 0
      ? [...table(["trial", "state", "what will move or come on"], plainRows(trials)), ""]
      : []),
    ...mindLines(minds),
    ...cautionLines(),
    "",
  ].join("\n");
}

/** `K2 by the lamp; E1, M2 by the state`: nothing where nothing comes on. */
function movesInWords({ moves, stateMoves, quantity }: Moved & Pick<ReadingSetup, "quantity">) {
  const tool = quantity === "amps" ? "the ammeter" : "the test lamp";
  return [
    ...(moves.length > 0 ? [`${moves.join(", ")} by ${tool}`] : []),
    ...(stateMoves.length > 0 ? [`${stateMoves.join(", ")} by the state`] : []),
  ].join("; ");
}

/** What to mind about single readings, each sentence once with what it is about. */
function mindLines(minds: readonly { of: string; caution: string | null }[]): string[] {
  const by = new Map<string, Set<string>>();
  for (const { of, caution } of minds) {
    if (caution === null) continue;
    const known = by.get(caution);
    if (known) known.add(of);
    else by.set(caution, new Set([of]));
  }
  if (by.size === 0) return [];
  const lines = [...by].flatMap(([caution, of]) =>
    wrapped(plain(`${[...of].join(", ")}: ${caution}`), WIDTH - 4).map((line, n) =>
      n === 0 ? `  * ${line}` : `    ${line}`,
    ),
  );
  return ["To mind", ...lines, ""];
}

const plainRows = (rows: readonly (readonly string[])[]) => rows.map((row) => row.map(plain));

export const predict: Command = {
  name: "predict",
  takes: "JOB",
  does: "what each reading should be, and which to take where",
  input: "job file",
  files: "one",
  options: ["json", "machine"],
  needs: [],
  async run(call, io) {
    const file = call.files[0] ?? "";
    const read = await readWithMachines(file, call.value("machine"));
    if (!read.ok) {
      io.err(complaint(file, read.issues));
      return EXIT.bad;
    }
    const { job, machines } = read.value;
    if (call.json) {
      const readings = machines.flatMap((machine) => taken(job, machine));
      const cavities = machines.flatMap((machine) => expected(job, machine));
      const trials = machines.flatMap((machine) => tried(job, machine));
      io.out(`${JSON.stringify({ file, readings, cavities, trials })}\n`);
    } else for (const machine of machines) io.out(`${machineText(file, job, machine)}\n`);
    return EXIT.done;
  },
};
