import { type Box, boundsOf, type Point } from "../../base/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import type { TraceAnswer } from "../commands/trace.ts";
import { counted, plain, WIDTH, wrapped } from "./plain.ts";
import { table } from "./table.ts";

const place = ([x, y]: Point) => `${Math.round(x)},${Math.round(y)}`;

function extentOf(points: readonly Point[]): string {
  const { left, top, right, bottom } = boundsOf(points) as Box;
  return `${place([left, top])} to ${place([right, bottom])}`;
}

function questionLine({ kind, at, isLikelier, nets }: LineQuestion): string {
  const what = kind === "dot" ? "a dot or a mere crossing" : "a gap or a break";
  const guess = isLikelier === "joined" ? "likelier joined" : "likelier apart";
  return `  ? ${what} at ${place(at)}: ${guess} (${nets.join(", ")})`;
}

/** A heading with lines under it; nothing where there are none. */
const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ["", title, ...lines];

/** What was traced, for people: the nets in a table, then what is doubtful and what was not found. */
export function traceText(answer: TraceAnswer): string {
  const { file, width, height, nets, questions, unmatched, notes } = answer;
  const rows = nets.map(({ id, terminals, runs, points }) => [
    id,
    terminals.map(plain).join(", "),
    String(runs.length),
    extentOf(points),
  ]);
  const listed = wrapped(unmatched.map(plain).join(", "), WIDTH - 4).map((line) => `    ${line}`);
  const lines = [
    plain(`${file}: ${counted(nets.length, "net")} on ${width} by ${height} pixels`),
    "",
    ...(nets.length === 0
      ? ["No net was found."]
      : table(["net", "terminals", "lines", "from, to (pixels)"], rows)),
    ...section("Doubtful places, where nothing was joined", questions.map(questionLine)),
    ...section("Terminals that no line was found near", unmatched.length === 0 ? [] : listed),
    ...section(
      "Notes",
      notes.flatMap((note) => wrapped(plain(note), WIDTH - 4).map((line) => `    ${line}`)),
    ),
    "",
  ];
  return lines.join("\n");
}
