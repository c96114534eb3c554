import type { SheetModel, SheetRow } from "./model.ts";

type Cell = string | number | null;

/** The columns, in the order that spreadsheets and scripts may rely on. */
const COLUMNS: readonly (readonly [
  name: string,
  cell: (row: SheetRow, model: SheetModel) => Cell,
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
];

/** RFC 4180 with a byte order mark, so that spreadsheets read Ω and é right. */
export function sheetCsv(model: SheetModel): string {
  const lines = [
    COLUMNS.map(([name]) => field(name)),
    ...model.rows.map((row) => COLUMNS.map(([, cell]) => field(cell(row, model)))),
  ];
  return `\ufeff${lines.map((line) => `${line.join(",")}\r\n`).join("")}`;
}

function field(cell: Cell): string {
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
