import { fail, ok, type Point, type Result } from "../../base/index.ts";
import {
  CrowdedPage,
  finished,
  type Grey,
  type LineQuestion,
  preparePage,
  roughPictureWords,
  type Traced,
  type TracedNet,
  traceLines,
  type WantedNets,
} from "../../scan/index.ts";
import { traceText } from "../format/trace-text.ts";
import { EXIT } from "../io.ts";
import { complaint } from "../job-input.ts";
import { walkOf } from "../net-walk.ts";
import { readPicture } from "../picture-input.ts";
import { readTerminals, type Terminals } from "../terminals-input.ts";
import type { Command } from "./command.ts";

/** A net as it is printed; all places are in pixels of the picture. */
export interface PrintedNet {
  readonly id: string;
  /** One walk over all its lines (`walkOf`). */
  readonly points: readonly Point[];
  /** Its lines one by one, each from end or joint to end or joint with its corners. */
  readonly runs: readonly (readonly Point[])[];
  readonly terminals: readonly string[];
}

export interface TraceAnswer {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly nets: readonly PrintedNet[];
  /** Places where the picture cannot tell whether lines are joined; none is joined there. */
  readonly questions: readonly LineQuestion[];
  /** Terminals that no line was found near. */
  readonly unmatched: readonly string[];
  readonly notes: readonly string[];
}

/** Hundredths of a pixel: nothing finer is known of a line. */
const rounded = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

function printed({ id, nodes, runs, terminals }: TracedNet): PrintedNet {
  const lines = {
    nodes: nodes.map((node) => ({ ...node, at: rounded(node.at) })),
    runs: runs.map((run) => ({ ...run, points: run.points.map(rounded) })),
  };
  return { id, points: walkOf(lines), runs: lines.runs.map(({ points }) => points), terminals };
}

const NOTHING_SAID: Terminals = { terminals: {}, parts: [], words: [], answers: [], unknown: [] };

const noteOf = (field: string) =>
  `The terminals file has a field ${JSON.stringify(field.slice(0, 60))} that is not known: it was passed over.`;

const DARK_PICTURE =
  "Most of this picture is dark, and lines are followed only where they are darker than their paper: where they are light, turn light and dark round in a picture editor and save it again.";

/** Brightness below which a pixel is called dark. */
const DARK = 128;

function isMostlyDark({ data }: Grey): boolean {
  let dark = 0;
  for (let n = 0; n < data.length; n++) if ((data[n] as number) < DARK) dark++;
  return 2 * dark > data.length;
}

/** What was passed over, and why there is little to be seen, in sentences. */
function notesOf(grey: Grey, { unknown }: Terminals, { nets, isTooRough }: Traced): string[] {
  const notes = unknown.map(noteOf);
  if (isTooRough) notes.push(roughPictureWords(null));
  if (nets.length === 0 && isMostlyDark(grey)) notes.push(DARK_PICTURE);
  return notes;
}

function tracedOn(
  grey: Grey,
  { terminals, ...context }: Terminals,
  which: WantedNets,
): Result<Traced> {
  try {
    return ok(finished(traceLines(finished(preparePage(grey)), context, terminals, which)));
  } catch (error) {
    if (!(error instanceof CrowdedPage)) throw error;
    return fail({ code: "picture", path: "", message: error.message });
  }
}

export const trace: Command = {
  name: "trace",
  takes: "IMAGE [--terminals FILE]",
  does: "the nets of the lines on a picture of a diagram",
  input: "picture",
  files: "one",
  options: ["json", "terminals"],
  needs: [],
  async run(call, io) {
    const file = call.files[0] ?? "";
    const picture = await readPicture(file);
    if (!picture.ok) {
      io.err(complaint(file, picture.issues));
      return EXIT.bad;
    }
    const grey = picture.value;
    const named = call.value("terminals");
    const said: Result<Terminals> =
      named === undefined ? ok(NOTHING_SAID) : await readTerminals(named, grey);
    if (!said.ok) {
      io.err(complaint(named ?? file, said.issues));
      return EXIT.bad;
    }
    const { terminals } = said.value;
    const followed = tracedOn(grey, said.value, named === undefined ? "all" : "with-terminals");
    if (!followed.ok) {
      io.err(complaint(file, followed.issues));
      return EXIT.bad;
    }
    const traced = followed.value;
    const found = new Set(traced.nets.flatMap((net) => net.terminals));
    const answer: TraceAnswer = {
      file,
      width: grey.width,
      height: grey.height,
      nets: traced.nets.map(printed),
      questions: traced.questions.map((question) => ({ ...question, at: rounded(question.at) })),
      unmatched: Object.keys(terminals).filter((name) => !found.has(name)),
      notes: notesOf(grey, said.value, traced),
    };
    io.out(call.json ? `${JSON.stringify(answer)}\n` : traceText(answer));
    return EXIT.done;
  },
};
