import type { PartOf } from "../../../src/job/index.ts";
import { drawPlan } from "../drawing/draw-plan.ts";
import { drawFrame } from "../drawing/frame.ts";
import { blankPage, drawText, type Page } from "../drawing/page.ts";
import { BRAKE_UNIT, TOWING_SIDE, TRAILER_PLAN } from "./plan.ts";

export const TRAILER_IMAGE = "images/trailer-sheet-1.png";

/** The trailer's sheet, clean off the plotter: PNG bytes. */
export function trailerSheet(): Uint8Array {
  const page = blankPage(TRAILER_PLAN.width, TRAILER_PLAN.height);
  drawFrame(page, TRAILER_PLAN, {
    zones: [8, 6],
    title: ["TRAILER 3", "15-POLE TOWING CONNECTION"],
    cells: [
      ["SYSTEM", "24 V DC"],
      ["CONNECTOR", "ISO 12098"],
      ["SHEET", "1 / 1"],
      ["ISSUE", "A"],
      ["DRAWING", "TR-0003"],
      ["COLOURS", "IEC 60757"],
    ],
  });
  drawPlan(page, TRAILER_PLAN, { wire: 4, symbol: 4.5, caption: 32, print: 27 });
  nameModule(page, TOWING_SIDE);
  nameModule(page, BRAKE_UNIT);
  return new Uint8Array(page.canvas.toBuffer("image/png"));
}

/** Id and label above the box; every word inside its edge, the mark outside. */
function nameModule(page: Page, module: PartOf<"module">): void {
  const [x, y] = module.at;
  const top = y - (module.size?.[1] ?? 0) / 2;
  drawText(page, `${module.id}  ${(module.label ?? "").toUpperCase()}`, [x, top - 34], {
    size: 36,
    align: "center",
    bold: true,
  });
  for (const pin of module.pins) {
    const [pinX, pinY] = pin.at ?? [0, 0];
    const inward = pinX > 0 ? -1 : 1;
    drawText(page, pin.printed ?? "", [x + pinX + inward * 22, y + pinY], {
      size: 34,
      align: inward > 0 ? "left" : "right",
    });
    drawText(page, pin.id, [x + pinX - inward * 14, y + pinY - 20], {
      size: 26,
      align: inward > 0 ? "right" : "left",
    });
  }
}
