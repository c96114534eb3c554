import type { Point } from "../../../src/base/index.ts";
import { type PinRef, splitRef } from "../../../src/job/index.ts";
import { drawPlan } from "../drawing/draw-plan.ts";
import { drawFrame } from "../drawing/frame.ts";
import { blankPage, drawBox, drawLine, drawText, type Page } from "../drawing/page.ts";
import { colourMark, pinAt } from "../drawing/plan.ts";
import { A1 } from "./module.ts";
import { SWEEPER_PLAN } from "./plan.ts";
import { X1 } from "./plug.ts";

/** The sheet as it left the drawing office, on white paper. */
export function drawSweeperPage(): Page {
  const page = blankPage(SWEEPER_PLAN.width, SWEEPER_PLAN.height);
  drawFrame(page, SWEEPER_PLAN, {
    zones: [8, 6],
    title: ["SWEEPER 14", "WATER PUMP HOLD CIRCUIT"],
    cells: [
      ["SYSTEM", "24 V DC"],
      ["DRAWING", "WP-0714"],
      ["SHEET", "7 / 12"],
      ["ISSUE", "C"],
      ["DRAWN", "14.03.08"],
      ["CHECKED", "—"],
    ],
  });
  drawPlan(page, SWEEPER_PLAN, { wire: 4, symbol: 4.5, caption: 34, print: 27 });
  drawModuleWords(page);
  drawTerminalMarks(page);
  drawFace(page, [620, 1690]);
  drawNotes(page, [1200, 1840]);
  return page;
}

function drawModuleWords(page: Page): void {
  const [x, y] = A1.at;
  drawText(page, "A1", [x, y - 72], { size: 44, align: "center", bold: true });
  drawText(page, "PUMP HOLD MODULE", [x, y - 26], { size: 36, align: "center" });
  for (const pin of A1.pins) {
    const [dx, dy] = pin.at ?? [0, 0];
    drawText(page, pin.printed ?? "", [x + dx, y + dy - 34], {
      size: 34,
      align: "center",
      bold: true,
    });
    drawText(page, pin.id, [x + dx + 10, y + dy + 26], { size: 28 });
  }
  drawText(page, "X1", [x - 560, y + 142], { size: 32, align: "right", bold: true });
}

/** Pixels from the pin to the middle of its mark. */
const TERMINAL_MARKS: readonly (readonly [PinRef, Point])[] = [
  ["S1:30", [0, -20]],
  ["S1:15", [2, -20]],
  ["S1:50", [2, 20]],
  ["K1:30", [20, -12]],
  ["K1:87", [20, 12]],
  ["K2:30", [20, -12]],
  ["K2:87", [20, 12]],
];

function drawTerminalMarks(page: Page): void {
  for (const [pin, [dx, dy]] of TERMINAL_MARKS) {
    const [x, y] = pinAt(SWEEPER_PLAN, pin);
    drawText(page, splitRef(pin).name, [x + dx, y + dy], { size: 20, align: "center" });
  }
}

/** The plug's wire side with its marks, as sheets like this one often show it. */
function drawFace(page: Page, [left, top]: Point): void {
  const scale = 17;
  const at = ([x, y]: Point): Point => [left + (x + 5) * scale, top + (y + 6.5) * scale];
  const box = (x: number, y: number, width: number, height: number) =>
    drawBox(page, at([x, y]), at([x + width, y + height]), 4);
  box(-5, -5, 28, 16);
  box(5, -8, 8, 3);
  for (const cavity of X1.cavities) {
    const [x, y] = at(cavity.at);
    page.pen.lineWidth = 3.5;
    page.pen.beginPath();
    page.pen.arc(x, y, 1.5 * scale, 0, 2 * Math.PI);
    page.pen.stroke();
    drawText(page, cavity.mark, [x, y + 2.5 * scale], { size: 28, align: "center" });
    if (cavity.blocked) {
      const reach = 1.05 * scale;
      drawLine(
        page,
        [
          [x - reach, y - reach],
          [x + reach, y + reach],
        ],
        3.5,
      );
      drawLine(
        page,
        [
          [x - reach, y + reach],
          [x + reach, y - reach],
        ],
        3.5,
      );
    }
  }
  drawText(page, "X1  8-WAY, WIRE SIDE", at([9, 13.6]), { size: 30, align: "center", bold: true });
  drawText(page, "7 NOT USED, 8 BLOCKED", at([9, 15.8]), { size: 26, align: "center" });
}

function drawNotes(page: Page, [x, y]: Point): void {
  const ground = SWEEPER_PLAN.wires.find(({ id }) => id === "W31");
  const lines = [
    "NOTES",
    "1  SHOWN WITH KEY OFF, ISOLATOR ON, TANK FULL, BUTTONS RELEASED.",
    "2  WIRE PRINT: NUMBER, THEN COLOUR TO IEC 60757, BASE / TRACER",
    `    (${ground ? colourMark(ground.colour) : "BN/BK"} IS BROWN WITH A BLACK STRIPE).`,
    "3  A1: PRESS EITHER BUTTON - PUMP ON AND HELD. PRESS AGAIN - OFF.",
    "4  SP2: SPLICE IN LOOM BEHIND PANEL. X34: RING TERMINAL, LEFT FRAME RAIL.",
    "5  ISOLATE BATTERY BEFORE OPENING THE PANEL.",
  ];
  lines.forEach((words, index) => {
    drawText(page, words, [x, y + index * 44], { size: 29, bold: index === 0 });
  });
}
