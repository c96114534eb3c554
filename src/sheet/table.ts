import type { Content, TableCell } from "pdfmake/interfaces";
import type { Colour } from "../job/index.ts";
import type { Density } from "./density.ts";
import type { SheetModel, SheetRow } from "./model.ts";
import { drawing, INK, wireSwatch } from "./svg.ts";
import { PLUGGED_IN, plain } from "./text.ts";

const SOFT = "#444444";
const HEADINGS = ["Mark", "Pin", "Printed", "What it is", "Wire", "Should read", "Evidence"];

/** The table of cavities with its notes; the heading repeats where a page ends. */
export function rowsTable(model: SheetModel, density: Density): Content[] {
  const { small, padding } = density;
  return [
    {
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: widths(density),
        body: [
          HEADINGS.map((text): TableCell => ({ text, bold: true, fontSize: small })),
          ...model.rows.map((row) => cells(row, model, density)),
        ],
      },
      layout: {
        hLineWidth: (line: number, node: { table: { body: unknown[] } }) =>
          line <= 1 || line === node.table.body.length ? 1.2 : 0.4,
        vLineWidth: () => 0,
        hLineColor: () => INK,
        paddingLeft: () => 3,
        paddingRight: () => 3,
        paddingTop: () => padding,
        paddingBottom: () => padding,
        fillColor: (line: number) => (model.rows[line - 1]?.wrong ? "#ececea" : null),
      },
    },
    { text: plain(notes(model).join(" ")), fontSize: small, margin: [0, 3, 0, 0] },
  ];
}

/** Mark, pin, printed, what it is, wire, should read, evidence. */
const widths = ({ type, runOn }: Density) =>
  runOn
    ? [type * 2.4, type * 3.4, type * 7.4, "*", type * 9.6, "*", "25%"]
    : [type * 2.4, type * 3.2, type * 6.6, "*", type * 6.6, "*", "23%"];

/** Beside what the user adopted; the notes under the table say what that means. */
const ADOPTED = "†";

function notes({ rows, sharedSetup }: SheetModel): string[] {
  const list: string[] = [];
  if (sharedSetup.length > 0) {
    const words = `All readings ${sharedSetup.join(", ")}`;
    const differs = rows.some((row) =>
      [...row.evidenceSetup, ...row.evidenceBesides].some((phrase) => phrase.includes(PLUGGED_IN)),
    );
    list.push(differs ? `${words}, except where “${PLUGGED_IN}” is said.` : `${words}.`);
  }
  const own = rows.some((row) => row.wireFrom === "machine");
  const drawn = rows.some((row) => row.wireFrom === "diagram");
  if (drawn) {
    list.push(
      own
        ? "Wires are as drawn on the diagram, except where “as seen” or “drawn as” is said."
        : "Wires are as drawn on the diagram; this machine’s were not noted.",
    );
  } else if (own) list.push("Wires are as seen on this machine.");
  if (rows.some((row) => row.adopted)) {
    list.push(
      `${ADOPTED} Adopted: the circuit’s role taken as what the cavity is. The word struck through is printed so on the diagram.`,
    );
  }
  return list;
}

function cells(row: SheetRow, model: SheetModel, density: Density): TableCell[] {
  const { type } = density;
  const isUnused = row.state === "empty" || row.state === "blocked";
  const setup = row.expectedSetup.filter((phrase) => !model.sharedSetup.includes(phrase));
  return [
    { text: plain(row.mark), fontSize: density.runOn ? type + 0.5 : type + 2, bold: true },
    { text: plain(row.pin), fontSize: type },
    printedWord(row, density),
    isUnused
      ? { text: row.is, fontSize: type, color: SOFT }
      : led({ text: row.adopted ? `${row.is} ${ADOPTED}` : row.is, bold: true }, row.by, density),
    wire(row, model, density),
    led({ text: row.expected }, setup.join(" · "), density),
    evidence(row, model, density),
  ];
}

interface Words {
  readonly text: string;
  readonly bold?: boolean;
  readonly color?: string;
  readonly struck?: boolean;
}

/** Chief words with lesser ones under them, or behind them where the sheet is tight. */
function led(chief: Words, lesser: string, { type, small, runOn }: Density): Content {
  const first: Content = {
    text: plain(chief.text),
    fontSize: type,
    bold: chief.bold ?? false,
    color: chief.color ?? INK,
    ...(chief.struck
      ? { decoration: "lineThrough" as const, decorationThickness: type * 0.11 }
      : {}),
  };
  if (lesser === "") return first;
  const gap = runOn ? "  " : "";
  const second: Content = { text: gap + plain(lesser), fontSize: small, color: SOFT };
  return runOn ? { text: [first, second] } : { stack: [first, second] };
}

function printedWord(row: SheetRow, density: Density): Content {
  if (row.printed === "") return { text: "–", fontSize: density.type, color: SOFT };
  if (!row.wrong) return { text: plain(row.printed), fontSize: density.type };
  return led({ text: row.printed, struck: true }, density.runOn ? "(wrong)" : "× (wrong)", density);
}

function wire(row: SheetRow, model: SheetModel, density: Density): Content {
  const { type, small, runOn } = density;
  if (!row.colour && row.number === "") return { text: "–", fontSize: type, color: SOFT };
  const chief = runOn ? [row.colourCode, row.number] : [row.colourCode || row.number];
  const code: Content = {
    text: chief
      .filter((word) => word !== "")
      .map(unbroken)
      .join("  "),
    fontSize: type,
    bold: true,
    noWrap: true,
  };
  const line = row.colour ? besideSwatch(row.colour, code, type) : code;
  const number = runOn || row.colourCode === "" ? "" : row.number;
  const lesser = [runOn || row.mm2 === null ? "" : `${row.mm2} mm²`, wireNote(row, model)];
  const words = lesser.filter((word) => word !== "").join(", ");
  if (number === "" && words === "") return line;
  const gap = number === "" || words === "" ? "" : "  ";
  return {
    stack: [
      line,
      {
        text: [
          { text: plain(number), fontSize: type, bold: true },
          { text: gap + plain(words), fontSize: small, color: SOFT },
        ],
      },
    ],
  };
}

/** Where this machine's wire is known beside the diagram's, the row says so; else a note does. */
function wireNote(row: SheetRow, model: SheetModel): string {
  if (row.diagramColourCode !== "") return `drawn as ${row.diagramColourCode}`;
  const isMixed = model.rows.some((other) => other.wireFrom === "diagram");
  return row.wireFrom === "machine" && isMixed ? "as seen" : "";
}

function besideSwatch(colour: Colour, code: Content, type: number): Content {
  const width = type * 2.4;
  const height = type * 0.7;
  const inside = { x: 0.5, y: 0.5, width: width - 1, height: height - 1 };
  return {
    columnGap: 3,
    columns: [
      {
        width,
        svg: drawing(width, height, wireSwatch(colour, inside)),
        margin: [0, type * 0.24, 0, 0],
      },
      { width: "*", stack: [code] },
    ],
  };
}

const unbroken = (text: string) => plain(text).replaceAll(" ", "\u00a0");

function evidence(row: SheetRow, model: SheetModel, density: Density): Content {
  if (row.evidence === "not measured" || row.evidence === "") {
    return { text: row.evidence, fontSize: density.small, color: SOFT };
  }
  const shape = row.proved ? "✓ " : row.faulty ? "! " : "";
  const setup = row.evidenceSetup.filter((phrase) => !model.sharedSetup.includes(phrase));
  const lesser = [...(row.proved ? ["confirmed"] : []), ...setup].join(" · ");
  const chief = led({ text: shape + row.evidence, bold: row.proved || row.faulty }, lesser, {
    ...density,
    type: Math.max(density.small, density.type * 0.88),
  });
  const besides = row.evidenceBesides.map((line) => withoutShared(line, model.sharedSetup));
  if (besides.length === 0) return chief;
  const lines = density.runOn ? [besides.join("; ")] : besides;
  return {
    stack: [chief, ...lines.map((line) => ({ text: plain(line), fontSize: density.small }))],
  };
}

const withoutShared = (line: string, shared: readonly string[]) =>
  shared.reduce((text, phrase) => text.replace(`, ${phrase}`, ""), line);
