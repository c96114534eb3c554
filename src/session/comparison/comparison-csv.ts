import { type CsvCell, csvText } from "../../sheet/index.ts";
import { formatColour, gaugeName } from "../../standards/index.ts";
import type { Comparison, ComparisonRow, MachineCell, WireLook } from "./comparison.ts";
import { wordsForAmong, wordsForMark, wordsForReading } from "./comparison-words.ts";

const lookCells = ({ colour, number, mm2, awg }: WireLook): CsvCell[] => [
  colour ? formatColour(colour) : "",
  number ?? "",
  mm2,
  awg === null ? "" : gaugeName(awg),
];

/** What each machine has, in the order in which it stands in the file. */
const OF_MACHINE: readonly (readonly [name: string, cell: (cell: MachineCell) => CsvCell])[] = [
  ["colour", ({ wire }) => (wire.colour ? formatColour(wire.colour) : "")],
  ["number", ({ wire }) => wire.number ?? ""],
  ["mm2", ({ wire }) => wire.mm2],
  ["not as drawn", ({ marks }) => marks.map(wordsForMark).join("; ")],
  ["circuit", ({ circuit }) => circuit],
  ["printed verdict", ({ verdict }) => verdict ?? ""],
  ["meter role", ({ meterRole }) => meterRole],
  ["meter verdict", ({ meterVerdict }) => meterVerdict ?? ""],
  ["reading", wordsForReading],
];

/** Some rows of a comparison, RFC 4180: one line a cavity, the machines side by side. */
export function comparisonCsv({ plug, machines }: Comparison, rows: readonly ComparisonRow[]) {
  const head = [
    ...["plug", "mark", "pin", "printed"],
    ...["colour on diagram", "number on diagram", "mm2 on diagram", "AWG on diagram"],
    ...machines.flatMap(({ name }) => OF_MACHINE.map(([column]) => `${name}: ${column}`)),
    "machines differ",
  ];
  const lines = rows.map((row) => [
    ...[plug, row.mark, row.pin ?? "", row.printed],
    ...lookCells(row.drawn),
    ...row.cells.flatMap((cell) => OF_MACHINE.map(([, of]) => of(cell))),
    wordsForAmong(row),
  ]);
  return csvText([head, ...lines]);
}
