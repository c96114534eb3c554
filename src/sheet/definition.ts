import type { Column, Content, TDocumentDefinitions } from "pdfmake/interfaces";
import type { Density } from "./density.ts";
import { extentOf, faceDrawing } from "./face-drawing.ts";
import type { SheetModel, SheetStatement } from "./model.ts";
import { INK, SHEET_FONT_FAMILY } from "./svg.ts";
import { rowsTable } from "./table.ts";
import { plain } from "./text.ts";

const PAGE = {
  A4: { width: 595.28, height: 841.89 },
  Letter: { width: 612, height: 792 },
} as const;

/** The page as pdfmake's own data. `pages` is told how many pages the layout took. */
export function sheetDefinition(
  model: SheetModel,
  density: Density,
  pages: (count: number) => void = () => {},
): TDocumentDefinitions {
  const { margin } = density;
  const width = PAGE[model.size].width - 2 * margin;
  return {
    pageSize: { ...PAGE[model.size] },
    pageMargins: [margin, margin * 0.8, margin, density.runOn ? 28 : 36],
    defaultStyle: {
      font: SHEET_FONT_FAMILY,
      fontSize: 9,
      color: INK,
      lineHeight: density.runOn ? 0.95 : 1.05,
    },
    info: {
      title: plain(`Pinout sheet, ${model.heading}, ${model.machine.name}`),
      subject: plain(model.job),
      creator: "Pintruth",
      producer: "Pintruth",
    },
    language: "en",
    footer: (page, count) => {
      pages(count);
      return footer(model, margin, page, count);
    },
    content: [
      header(model, density, width),
      faceBlock(model, density, width),
      ...rowsTable(model, density),
      ...warnings(model, density),
      ...setAside(model, density),
      closing(model, density),
    ],
  };
}

function header(model: SheetModel, density: Density, width: number): Content {
  const { runOn } = density;
  const { machine } = model;
  const facts = [
    machine.serial === null ? "" : `Serial ${machine.serial}`,
    machine.hours === null ? "" : `${machine.hours} h`,
    `${model.systemVoltage} V system`,
    ...(runOn ? [model.job] : []),
  ].filter((fact) => fact !== "");
  return {
    stack: [
      {
        columns: [
          {
            width: "*",
            stack: [
              { text: "CORRECTED PINOUT SHEET", fontSize: 8, bold: true, characterSpacing: 1.2 },
              { text: plain(model.heading), fontSize: runOn ? 16 : 21, bold: true },
              { text: plain(model.modules || "no pins matched yet"), fontSize: 11 },
            ],
          },
          {
            width: "42%",
            alignment: "right",
            stack: [
              { text: "MACHINE", fontSize: 8, bold: true, characterSpacing: 1.2 },
              { text: plain(machine.name), fontSize: 14, bold: true },
              { text: plain(facts.join(" · ")), fontSize: 9.5 },
              ...(runOn ? [] : [{ text: plain(model.job), fontSize: 9.5 }]),
            ],
          },
        ],
        columnGap: 16,
      },
      ruleLine(width, runOn ? 3 : 5),
    ],
  };
}

function ruleLine(width: number, gap: number): Content {
  const line = { type: "line" as const, x1: 0, y1: 0, x2: width, y2: 0 };
  return { canvas: [{ ...line, lineWidth: 1.6, lineColor: INK }], margin: [0, gap, 0, gap] };
}

/** The face beside what was found, or above it where the face is long and low. */
function faceBlock(model: SheetModel, density: Density, width: number): Content {
  const { left, top, right, bottom } = extentOf(model.face);
  const isLong = (right - left) / (bottom - top) > 2.4;
  const most = { width: isLong ? width : width * 0.5, height: density.faceHeight };
  const face = faceDrawing(model.face, model.rows, most);
  const seen: Content = {
    stack: [
      { text: plain(model.sideWords), bold: true, fontSize: 10.5, margin: [0, 0, 0, 4] },
      { svg: face.svg, width: face.width },
      { text: KEY_TO_FACE, fontSize: 7.5, margin: [0, 4, 0, 0] },
    ],
  };
  const found: Content = { stack: contradictions(model, density, isLong) };
  const margin: [number, number, number, number] = [0, 0, 0, density.runOn ? 4 : 8];
  if (isLong) return { stack: [seen, { ...found, margin: [0, 5, 0, 0] }], margin };
  return {
    columns: [
      { width: Math.max(face.width, width * 0.4), ...seen },
      { width: "*", ...found },
    ],
    columnGap: 18,
    margin,
  };
}

const KEY_TO_FACE =
  "Wire drawn in its colours with its code beneath. Cross in a black disc: the diagram’s word is wrong. Dashed ring: empty or blocked.";

/** More than this many warnings are counted, so that the sheet stays one page. */
const MOST_WARNINGS = 6;

function contradictions(model: SheetModel, density: Density, isLong: boolean): Content[] {
  const fontSize = Math.min(9.5, density.type);
  const count = model.contradictions.length;
  const none =
    model.setAside.here.length > 0
      ? "No contradictions besides what is set aside"
      : "No contradictions found";
  const title = count === 0 ? none : `${count} contradiction${count === 1 ? "" : "s"}`;
  const list = model.contradictions.map((one) => statement("×", one, fontSize));
  return [
    { text: title, bold: true, fontSize: density.runOn ? 10 : 11.5, margin: [0, 0, 0, 1] },
    ...(isLong && list.length > 2 ? [inTwoColumns(list)] : list),
    { text: plain(model.standing), fontSize, margin: [0, density.runOn ? 2 : 5, 0, 0] },
  ];
}

/** Under the table: what else was found about this plug. */
function warnings(model: SheetModel, density: Density): Content[] {
  const fontSize = Math.min(9, density.small);
  const list = model.warnings.slice(0, MOST_WARNINGS).map((one) => statement("!", one, fontSize));
  const left = leftOut(model);
  const counted: Content[] = left === "" ? [] : [{ text: left, fontSize, margin: [0, 2, 0, 0] }];
  if (list.length === 0) return counted;
  return [
    { text: "Also found", bold: true, fontSize: 9.5, margin: [0, density.runOn ? 3 : 6, 0, 1] },
    inTwoColumns(list),
    ...counted,
  ];
}

/** Notes: what was found and set aside, with the reason. */
function setAside(model: SheetModel, density: Density): Content[] {
  const { here: all, elsewhere } = model.setAside;
  const fontSize = Math.min(9, density.small);
  const list = all.slice(0, MOST_SET_ASIDE).map(({ marks, message, reason }) => {
    const told = `${shortened(message)} Set aside: ${shortened(reason)}`;
    return statement("–", { marks, message: told }, fontSize);
  });
  const more = [
    all.length > list.length ? `${all.length - list.length} more on this plug` : "",
    elsewhere > 0 ? `${elsewhere} elsewhere in the job` : "",
  ].filter((words) => words !== "");
  if (list.length === 0 && more.length === 0) return [];
  return [
    {
      text: "Set aside by the user",
      bold: true,
      fontSize: 9.5,
      margin: [0, density.runOn ? 3 : 6, 0, 1],
    },
    ...(list.length === 0 ? [] : [inTwoColumns(list)]),
    ...(more.length === 0
      ? []
      : [
          {
            text: `Set aside besides: ${more.join(", ")}.`,
            fontSize,
            margin: [0, 2, 0, 0] as [number, number, number, number],
          },
        ]),
  ];
}

const MOST_SET_ASIDE = 6;
/** A reason may be a page long: on the sheet it is cut, in the job it is whole. */
const MOST_LETTERS = 280;

/** A word longer than this would run out of its column. */
const LONGEST_WORD = /(\S{30})(?=\S)/gu;

function shortened(text: string): string {
  // No more of a book is looked at than could be printed.
  const letters = [...plain(text.slice(0, 4 * MOST_LETTERS))];
  const kept = letters.slice(0, MOST_LETTERS).join("").replace(LONGEST_WORD, "$1 ");
  return letters.length <= MOST_LETTERS && text.length <= 4 * MOST_LETTERS ? kept : `${kept} …`;
}

/** `3 more not shown: 1 warning and 2 notes on this plug.`; empty when all is. */
function leftOut({ warnings: all, unshown }: SheetModel): string {
  const over = Math.max(0, all.length - MOST_WARNINGS);
  const { notes, elsewhere } = unshown;
  const count = (number: number, word: string) =>
    number === 0 ? "" : `${number} ${word}${number === 1 ? "" : "s"}`;
  const here = [count(over, "warning"), count(notes, "note")].filter((words) => words !== "");
  const parts = [
    here.length > 0 ? `${here.join(" and ")} on this plug` : "",
    elsewhere > 0 ? `${count(elsewhere, "finding")} elsewhere in the job` : "",
  ].filter((words) => words !== "");
  const total = over + notes + elsewhere;
  return total === 0 ? "" : `${total} more not shown: ${parts.join(", ")}.`;
}

function inTwoColumns(list: readonly Content[]): Content {
  const half = Math.ceil(list.length / 2);
  return {
    columnGap: 14,
    columns: [
      { width: "*", stack: list.slice(0, half) },
      { width: "*", stack: list.slice(half) },
    ],
  };
}

function statement(shape: string, { marks, message }: SheetStatement, fontSize: number): Content {
  return {
    columnGap: 2,
    columns: [
      { width: 9, text: shape, bold: true, fontSize },
      {
        width: "*",
        fontSize,
        text: [marks === "" ? "" : { text: `${plain(marks)}  `, bold: true }, plain(message)],
      },
    ],
    margin: [0, 1, 0, 1],
  };
}

function closing(model: SheetModel, { runOn }: Density): Content {
  return {
    unbreakable: true,
    margin: [0, runOn ? 5 : 9, 0, 0],
    stack: [
      { text: plain(model.whoComesFirst), bold: true, fontSize: 9.5, margin: [0, 0, 0, 2] },
      runOn
        ? { text: plain(model.cautions.join(" ")), fontSize: 7.5 }
        : inTwoColumns(model.cautions.map((text) => caution(text))),
      {
        margin: [0, runOn ? 4 : 14, 0, 0],
        columnGap: 14,
        columns: [
          signLine("Prepared by", model.preparedBy, "*"),
          signLine("Checked on the machine by", "", "*"),
          signLine("Signature", "", "*"),
          signLine("Date", "", 70),
        ],
      },
    ],
  };
}

const caution = (text: string): Content => ({
  columnGap: 0,
  columns: [
    { width: 8, text: "–", fontSize: 8 },
    { width: "*", text: plain(text), fontSize: 8 },
  ],
});

function signLine(label: string, filled: string, width: "*" | number): Column {
  const table: Content = {
    table: {
      widths: ["*"],
      body: [
        [{ text: filled === "" ? " " : plain(filled), fontSize: 10 }],
        [{ text: label, fontSize: 7.5 }],
      ],
    },
    layout: {
      hLineWidth: (line: number) => (line === 1 ? 0.8 : 0),
      vLineWidth: () => 0,
      paddingLeft: () => 0,
      paddingRight: () => 0,
      paddingTop: () => 1,
      paddingBottom: () => 1,
    },
  };
  return { width, stack: [table] };
}

function footer(model: SheetModel, margin: number, page: number, count: number): Content {
  const more = page < count ? ` · continues on page ${page + 1}` : "";
  return {
    margin: [margin, 6, margin, 0],
    fontSize: 8,
    columns: [
      {
        width: "*",
        text: plain(
          `${model.heading} · ${model.machine.name} · revision ${model.revision} · ${model.date}`,
        ),
      },
      { width: "auto", text: `Page ${page} of ${count}${more}`, bold: count > 1 },
    ],
  };
}
