import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Job } from "../../job/index.ts";
import {
  renderSheetPdf,
  SHEET_FONT_FILES,
  type SheetFonts,
  type SheetModel,
  sheetCsv,
  sheetModel,
} from "../../sheet/index.ts";
import { writeOutput } from "../../store/files.ts";
import { type Call, type Io, machinesOf, readJob } from "../call.ts";
import { complain, type Status } from "../status.ts";

const refuse = (io: Io, file: string, message: string) =>
  complain(io, file, [{ code: "call", path: "", message }]);

/** Writes the pinout sheet of one machine. */
export async function sheet(call: Call, io: Io): Promise<Status> {
  const [file, ...more] = call.files;
  if (file === undefined || more.length > 0) return refuse(io, "", "sheet takes one job file");
  const { out } = call;
  const kind = /\.(pdf|csv)$/i.exec(out ?? "")?.[1]?.toLowerCase();
  if (out === null || kind === undefined)
    return refuse(io, out ?? "", "say where to: --out FILE.pdf or --out FILE.csv");
  const job = await readJob(file);
  if (!job.ok) return complain(io, file, job.issues);
  const machines = machinesOf(job.value, call.machine);
  if (!machines.ok) return complain(io, file, machines.issues);
  const [machine, ...others] = machines.value;
  if (machine === undefined || others.length > 0) {
    const ids = machines.value.join(", ");
    return refuse(io, file, `a sheet is for one machine: choose with --machine (${ids})`);
  }
  const plug = plugOf(job.value, call.plug);
  if (!plug) {
    const ids = job.value.plugs.map((one) => one.id).join(", ");
    return refuse(
      io,
      file,
      ids
        ? `there is no plug ${call.plug}; the job has ${ids}`
        : "the job has no plug to print: draw one",
    );
  }
  const model = sheetModel(job.value, machine, {
    side: call.side ?? plug.side,
    size: call.size,
    date: io.today(),
    revision: call.revision,
    plug: plug.id,
  });
  const written = await writeOutput(out, kind === "csv" ? sheetCsv(model) : await pdfOf(model));
  return written.ok ? 0 : complain(io, out, written.issues);
}

const plugOf = (job: Job, id: string | null) =>
  id === null ? job.plugs[0] : job.plugs.find((one) => one.id === id);

async function pdfOf(model: SheetModel): Promise<Uint8Array> {
  const bytesOf = async (face: keyof SheetFonts) =>
    new Uint8Array(await readFile(fileURLToPath(import.meta.resolve(SHEET_FONT_FILES[face]))));
  return renderSheetPdf(model, { regular: await bytesOf("regular"), bold: await bytesOf("bold") });
}
