import { expect, test } from "vitest";
import { CONFUSABLE_LETTERS, marksOf } from "../../src/plug/index.ts";
import { formatColour, isTerminalCode, parseColour } from "../../src/standards/index.ts";
import { referenceRows } from "./rows.ts";

const rows = referenceRows("connectors.csv");
const pinsOf = (standard: string) => rows?.filter((row) => row.standard === standard) ?? [];

test.skipIf(!rows)(
  "every wire colour of the published pin tables is read and printed alike",
  () => {
    const printed = (rows ?? [])
      .map((row) => row["colour (IEC 60757)"] ?? "")
      .filter((colour) => colour !== "");
    expect(printed.length).toBeGreaterThan(50);
    for (const text of printed) {
      const colour = parseColour(text);
      expect(colour && formatColour(colour)).toBe(text);
    }
  },
);

test.skipIf(!rows)("ISO 12098 pins are marked 1 to 15", () => {
  const marks = pinsOf("ISO 12098 15-pin 24V").map((row) => row.pin);
  expect(marksOf({ style: "numbers", first: 1 }, 15)).toEqual(marks);
});

test.skipIf(!rows)("STANAG 4007 letters its twelve pins without G and I", () => {
  const marks = pinsOf("STANAG 4007 12-pin").map((row) => row.pin);
  expect(marks).toHaveLength(12);
  expect(marksOf({ style: "letters", leaveOut: [...CONFUSABLE_LETTERS, "G"] }, 12)).toEqual(marks);
});

test.skipIf(!rows)("terminal numbers of the published pin tables are known", () => {
  const terminals = new Set((rows ?? []).map((row) => row["DIN 72552"] ?? ""));
  terminals.delete("");
  // 54G (rear fog lamp, ISO 1724) is trade use; the table of DIN 72552 at hand does not list it.
  terminals.delete("54G");
  expect(terminals.size).toBeGreaterThan(6);
  for (const terminal of terminals) expect(isTerminalCode(terminal), terminal).toBe(true);
});
