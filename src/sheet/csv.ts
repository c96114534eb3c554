import type { SheetModel, SheetRow } from "./model.ts";

export type CsvCell = string | number | null;

/** The columns, in the order that spreadsheets and scripts may rely on. */
const COLUMNS: readonly (readonly [
  name: string,
  cell: (row: SheetRow, model: SheetModel) => CsvCell,
])[] = [
  ["mark", (row) => row.mark],
  ["pin", (row) => row.pin],
  ["printed", (row) => (row.wrong ? `${row.printed} (wrong)` : row.printed)],
  ["what it is", (row) => row.is],
  ["shown by", (row) => row.by],
  ["verdict", (row) => row.verdict ?? row.state],
  ["colour", (row) => row.colourCode],
  ["number", (row) => row.number],
  ["mm2", (row) => row.mm2],
  ["wire as on", (row) => row.wireFrom ?? ""],
  ["colour on diagram", (row) => row.diagramColourCode],
  ["expected", (row) => row.expected],
  ["measured how", (row) => row.expectedSetup.join(" · ")],
  ["evidence", (row) => row.evidence],
  ["confirmed", (row) => (row.state === "wired" ? (row.proved ? "yes" : "no") : "")],
  ["plug", (_row, model) => model.heading],
  ["module", (_row, model) => model.modules],
  ["machine", (_row, model) => model.machine.name],
  ["serial", (_row, model) => model.machine.serial ?? ""],
  ["hours", (_row, model) => model.machine.hours],
  ["date", (_row, model) => model.date],
  ["revision", (_row, model) => model.revision],
  ["evidence measured how", (row) => row.evidenceSetup.join(" · ")],
  ["also measured", (row) => row.evidenceBesides.join(" · ")],
  ["adopted", (row) => (row.adopted ? "yes" : "")],
];

export const sheetCsv = (model: SheetModel): string =>
  csvText([
    COLUMNS.map(([name]) => name),
    ...model.rows.map((row) => COLUMNS.map(([, cell]) => cell(row, model))),
  ]);

/** RFC 4180 with a byte order mark, so that spreadsheets read Ω and é right; the first line is the head. */
export const csvText = (lines: readonly (readonly CsvCell[])[]): string =>
  `\ufeff${lines.map((line) => `${line.map(field).join(",")}\r\n`).join("")}`;

function field(cell: CsvCell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const text = harmless(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A spreadsheet runs a cell that starts like a formula; an apostrophe keeps it text. */
function harmless(text: string): string {
  const isNumber = /^[+-]?\d+(?:[.,]\d+)?$/.test(text);
  return !isNumber && /^\s*[=+\-@＝＋－＠|]|^[\t\r\n]/u.test(text) ? `'${text}` : text;
}
