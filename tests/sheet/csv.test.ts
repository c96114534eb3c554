import { expect, test } from "vitest";
import { sheetCsv, sheetModel } from "../../src/sheet/index.ts";
import { eightWayCheck, eightWayJob } from "./fixtures.ts";

/** RFC 4180 read back: quotes doubled inside quotes, lines end in CR LF. */
function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = "";
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const c = text[at];
    if (quoted) {
      if (c !== '"') field += c;
      else if (text[at + 1] === '"') {
        field += '"';
        at++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ",") {
      row.push(field);
      field = "";
    } else if (c === "\r" && text[at + 1] === "\n") {
      row.push(field);
      rows.push(row);
      row = [];
      field = "";
      at++;
    } else field += c;
  }
  expect(quoted).toBe(false);
  expect([row, field]).toEqual([[], ""]);
  return rows;
}

const options = { side: "wire", size: "A4", date: "2025-11-14", revision: "A" } as const;
const tableOf = (job = eightWayJob()) => {
  const text = sheetCsv(sheetModel(job, "M1", { ...options, check: eightWayCheck() }));
  expect(text.startsWith("\ufeff")).toBe(true);
  const [head = [], ...rows] = parseCsv(text.slice(1));
  return { head, rows: rows.map((row) => Object.fromEntries(head.map((k, i) => [k, row[i]]))) };
};

test("the columns are these, in this order", () => {
  expect(tableOf().head).toEqual([
    "mark",
    "pin",
    "printed",
    "what it is",
    "shown by",
    "verdict",
    "colour",
    "number",
    "mm2",
    "wire as on",
    "colour on diagram",
    "expected",
    "measured how",
    "evidence",
    "confirmed",
    "plug",
    "module",
    "machine",
    "serial",
    "hours",
    "date",
    "revision",
    "evidence measured how",
    "also measured",
    "adopted",
  ]);
});

test("a row a cavity, wrong words marked in words", () => {
  const { rows } = tableOf();
  expect(rows).toHaveLength(8);
  expect(rows[3]).toMatchObject({
    mark: "4",
    pin: "A1:4",
    printed: "OUT (wrong)",
    "what it is": "ground",
    verdict: "contradicted",
    colour: "BK",
    number: "104",
    mm2: "1.5",
    machine: "Sweeper 14",
    hours: "5120",
  });
  expect(rows[6]).toMatchObject({ verdict: "empty", confirmed: "" });
});

test("quotes, commas and line breaks survive", () => {
  const job = eightWayJob();
  const [machine] = job.machines;
  if (!machine) throw new Error("no machine");
  machine.name = 'say "14", the\r\nyellow one';
  expect(tableOf(job).rows[0]?.machine).toBe(machine.name);
});

test.each([
  ["=cmd|' /C calc'!A0", "'=cmd|' /C calc'!A0"],
  ["+12V", "'+12V"],
  ["@SUM(1)", "'@SUM(1)"],
  ["-A1", "'-A1"],
  [" =1+1", "' =1+1"],
  ["\t=1", "'\t=1"],
  ["＝1+1", "'＝1+1"],
  ["-0.5", "-0.5"],
  ["+12", "+12"],
  ["B+", "B+"],
])("a cell %j is written %j, so that no spreadsheet runs it", (serial, written) => {
  const job = eightWayJob();
  const [machine] = job.machines;
  if (!machine) throw new Error("no machine");
  machine.serial = serial;
  expect(tableOf(job).rows[0]?.serial).toBe(written);
});
