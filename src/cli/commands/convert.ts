import { missingPictures } from "../../job/index.ts";
import { writeJobPath } from "../../store/files.ts";
import { counted, plain } from "../format/plain.ts";
import { EXIT } from "../io.ts";
import { complaint, readJob } from "../job-input.ts";
import type { Command } from "./command.ts";

/** From one form of the job file to the other, pictures and all; never with a picture lost. */
export const convert: Command = {
  name: "convert",
  takes: "JOB --out FILE",
  does: "between .json with its pictures beside it and .pintruth",
  input: "job file",
  files: "one",
  options: ["json", "out"],
  needs: ["out"],
  async run(call, io) {
    const file = call.files[0] ?? "";
    const out = call.value("out") ?? "";
    if (!/\.(json|pintruth)$/i.test(out)) {
      const message = "a job is written as .json or .pintruth: name such a file after --out";
      io.err(complaint(out, [{ code: "call", path: "", message }]));
      return EXIT.bad;
    }
    const read = await readJob(file, { pictures: true });
    if (!read.ok) {
      io.err(complaint(file, read.issues));
      return EXIT.bad;
    }
    const { job, pictures } = read.value;
    const [missing] = missingPictures(job, pictures);
    if (missing !== undefined) {
      const message = `the picture ${JSON.stringify(missing)} is not there: put it where the job looks for it`;
      io.err(complaint(file, [{ code: "missing-picture", path: "", message }]));
      return EXIT.bad;
    }
    const written = await writeJobPath(out, job, pictures);
    if (!written.ok) {
      io.err(complaint(out, written.issues));
      return EXIT.bad;
    }
    const count = pictures.size;
    if (call.json) io.out(`${JSON.stringify({ file, out, pictures: count })}\n`);
    else io.out(`${plain(out)} written with ${counted(count, "picture")}\n`);
    return EXIT.done;
  },
};
