import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Job, Machine } from "../../job/index.ts";
import {
  renderSheetPdf,
  SHEET_FONT_FILES,
  type SheetFonts,
  type SheetModel,
  type SheetOptions,
  sheetCsv,
  sheetModel,
} from "../../sheet/index.ts";
import { writeOutput } from "../../store/files.ts";
import { plain } from "../format/plain.ts";
import { EXIT, type Exit, type Io } from "../io.ts";
import { complaint, readWithMachines } from "../job-input.ts";
import type { Call, Command } from "./command.ts";

type Maker = (model: SheetModel) => Promise<Uint8Array | string>;

/** What can be written, by the ending of the file. */
const MAKERS: Readonly<Record<string, Maker>> = {
  pdf: async (model) => renderSheetPdf(model, await fonts()),
  csv: async (model) => sheetCsv(model),
};

async function fonts(): Promise<SheetFonts> {
  const { resolve } = createRequire(import.meta.url);
  const bytes = async (file: string) => new Uint8Array(await readFile(resolve(file)));
  return {
    regular: await bytes(SHEET_FONT_FILES.regular),
    bold: await bytes(SHEET_FONT_FILES.bold),
  };
}

const SIDES: readonly SheetOptions["side"][] = ["wire", "mating"];
const PAPERS: readonly SheetOptions["size"][] = ["A4", "Letter"];

/** `sheet.pdf` for one machine; `sheet-<machine>.pdf` for each of several. */
function fileFor(out: string, machine: Machine, count: number): string {
  if (count === 1) return out;
  const dot = out.lastIndexOf(".");
  return `${out.slice(0, dot)}-${machine.id.replace(/[^\p{L}\p{N}_-]+/gu, "_")}${out.slice(dot)}`;
}

interface Order {
  readonly file: string;
  readonly job: Job;
  readonly out: string;
  readonly make: Maker;
  readonly options: SheetOptions;
}

/** Null when the sheet is written; else the complaint. */
async function writeSheet(order: Order, machine: Machine, io: Io, json: boolean) {
  const { file, job, out, make, options } = order;
  const written = await writeOutput(out, await make(sheetModel(job, machine.id, options)));
  if (!written.ok) return complaint(out, written.issues);
  if (json) io.out(`${JSON.stringify({ file, machine: machine.id, plug: options.plug, out })}\n`);
  else io.out(`${plain(`${out} written: plug ${options.plug} of machine ${machine.id}`)}\n`);
  return null;
}

async function run(call: Call, io: Io): Promise<Exit> {
  const file = call.files[0] ?? "";
  const out = call.value("out") ?? "";
  const refuse = (about: string | null, code: string, path: string, message: string): Exit => {
    io.err(complaint(about, [{ code, path, message }]));
    return EXIT.bad;
  };
  const make = MAKERS[/\.([a-z]+)$/i.exec(out)?.[1]?.toLowerCase() ?? ""];
  if (!make) {
    const message = "a sheet is written only as .pdf or .csv: name such a file after --out";
    return refuse(out, "call", "", message);
  }
  const asked = call.value("side");
  const side = SIDES.find((one) => one === asked);
  if (asked && !side)
    return refuse(null, "call", "", "--side is wire or mating: write one of them");
  const size = PAPERS.find(
    (one) => one.toLowerCase() === (call.value("size") ?? "A4").toLowerCase(),
  );
  if (!size) return refuse(null, "call", "", "--size is A4 or Letter: write one of them");

  const read = await readWithMachines(file, call.value("machine"));
  if (!read.ok) {
    io.err(complaint(file, read.issues));
    return EXIT.bad;
  }
  const { job, machines } = read.value;
  if (machines.length === 0) {
    const message = "the job has no machine to make a sheet for: add one";
    return refuse(file, "no-machine", "machines", message);
  }
  const wanted = call.value("plug");
  const plug = wanted === undefined ? job.plugs[0] : job.plugs.find((one) => one.id === wanted);
  if (!plug) {
    const known = job.plugs.map((one) => one.id).join(", ") || "none";
    const message =
      wanted === undefined
        ? "the job has no plug to make a sheet of: draw one"
        : `the job has no plug ${JSON.stringify(wanted)}: choose one of its plugs (${known})`;
    return refuse(file, "no-plug", "plugs", message);
  }
  const revision = call.value("revision") ?? "1";
  const options: SheetOptions = {
    side: side ?? plug.side,
    size,
    date: io.today(),
    revision,
    plug: plug.id,
  };
  for (const machine of machines) {
    const target = fileFor(out, machine, machines.length);
    const failed = await writeSheet(
      { file, job, out: target, make, options },
      machine,
      io,
      call.json,
    );
    if (failed === null) continue;
    io.err(failed);
    return EXIT.bad;
  }
  return EXIT.done;
}

export const sheet: Command = {
  name: "sheet",
  takes: "JOB --out FILE.pdf|.csv",
  does: "the corrected pinout sheet, one file a machine",
  input: "job file",
  files: "one",
  options: ["json", "machine", "out", "plug", "side", "size", "revision"],
  needs: ["out"],
  run,
};
