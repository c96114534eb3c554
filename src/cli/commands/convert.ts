import { readJobPath, writeJobPath } from "../../store/files.ts";
import type { Call, Io } from "../call.ts";
import { complain, type Status } from "../status.ts";

/** Turns a job file with pictures beside it into one archive, or the other way. */
export async function convert(call: Call, io: Io): Promise<Status> {
  const [file, ...more] = call.files;
  if (file === undefined || more.length > 0)
    return complain(io, "", [{ code: "call", path: "", message: "convert takes one job file" }]);
  const { out } = call;
  if (out === null || !/\.(json|pintruth)$/i.test(out)) {
    const message = "say where to: --out FILE.json or --out FILE.pintruth";
    return complain(io, out ?? "", [{ code: "call", path: "", message }]);
  }
  const read = await readJobPath(file, { pictures: true });
  if (!read.ok) return complain(io, file, read.issues);
  const written = await writeJobPath(out, read.value.job, read.value.pictures);
  return written.ok ? 0 : complain(io, out, written.issues);
}
