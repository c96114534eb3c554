import { distance, type Point } from "../../../src/base/index.ts";
import { drawLine, drawText, type Page } from "./page.ts";
import { colourMark, lineOf, type Plan, type PlannedPart, type PlannedWire } from "./plan.ts";
import { drawSymbol } from "./symbol.ts";

export interface Pens {
  /** Pixels. */
  readonly wire: number;
  readonly symbol: number;
  readonly caption: number;
  readonly print: number;
}

/** Wires first, symbols over them, then everything written. */
export function drawPlan(page: Page, plan: Plan, pens: Pens): void {
  for (const wire of plan.wires) drawLine(page, lineOf(plan, wire), pens.wire);
  for (const { part } of plan.parts) drawSymbol(page, part, pens.symbol);
  for (const planned of plan.parts) drawCaption(page, planned, pens.caption);
  for (const wire of plan.wires) drawPrint(page, plan, wire, pens.print);
}

function drawCaption(page: Page, { part, caption }: PlannedPart, size: number): void {
  if (!caption) return;
  caption.lines.forEach((words, index) => {
    const at: Point = [
      part.at[0] + caption.offset[0],
      part.at[1] + caption.offset[1] + index * size * 1.12,
    ];
    const bold = index === 0;
    drawText(page, words, at, { size: bold ? size : size * 0.86, align: caption.align, bold });
  });
}

/** Number and colour along the wire: above a level leg, to the left of an upright one. */
function drawPrint(page: Page, plan: Plan, wire: PlannedWire, size: number): void {
  const line = lineOf(plan, wire);
  const legs = line.slice(1).map((to, index) => ({ from: line[index] ?? to, to }));
  const longest = legs.reduce((best, leg) =>
    distance(leg.from, leg.to) > distance(best.from, best.to) ? leg : best,
  );
  const { from, to } = wire.printOn === undefined ? longest : (legs[wire.printOn] ?? longest);
  const share = wire.printAt ?? 0.5;
  const at: Point = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  const upright = Math.abs(from[0] - to[0]) < Math.abs(from[1] - to[1]);
  const gap = size * 0.72;
  const words = `${wire.number} ${colourMark(wire.colour)}`;
  if (upright && wire.printBeside) {
    drawText(page, words, [at[0] + gap * 0.6, at[1]], { size });
    return;
  }
  const middle: Point = upright ? [at[0] - gap, at[1]] : [at[0], at[1] - gap];
  drawText(page, words, middle, { size, align: "center", turn: upright ? -90 : 0 });
}
