import type { Point } from "../../../src/base/index.ts";
import { drawBox, drawLine, drawText, type Page } from "./page.ts";

export interface Frame {
  /** Columns and rows of the grid letters along the edge. */
  readonly zones: readonly [number, number];
  readonly title: readonly [string, string];
  /** Six cells of the title block: small heading, content. */
  readonly cells: readonly (readonly [string, string])[];
}

const MARGIN = 90;
const BAND = 36;
const BLOCK: Point = [1180, 300];

/** Border with grid letters, and the title block in the bottom right corner. */
export function drawFrame(
  page: Page,
  { width, height }: { readonly width: number; readonly height: number },
  { zones: [columns, rows], title, cells }: Frame,
): void {
  const right = width - MARGIN;
  const bottom = height - MARGIN;
  drawBox(page, [MARGIN - BAND, MARGIN - BAND], [right + BAND, bottom + BAND], 2.5);
  drawBox(page, [MARGIN, MARGIN], [right, bottom], 5);
  for (let column = 0; column < columns; column++) {
    const step = (right - MARGIN) / columns;
    const x = MARGIN + step * column;
    for (const y of [MARGIN - BAND / 2, bottom + BAND / 2]) {
      drawText(page, String(column + 1), [x + step / 2, y], { size: 24, align: "center" });
      if (column > 0)
        drawLine(
          page,
          [
            [x, y - BAND / 2],
            [x, y + BAND / 2],
          ],
          2.5,
        );
    }
  }
  for (let row = 0; row < rows; row++) {
    const step = (bottom - MARGIN) / rows;
    const y = MARGIN + step * row;
    for (const x of [MARGIN - BAND / 2, right + BAND / 2]) {
      drawText(page, String.fromCharCode(65 + row), [x, y + step / 2], {
        size: 24,
        align: "center",
      });
      if (row > 0)
        drawLine(
          page,
          [
            [x - BAND / 2, y],
            [x + BAND / 2, y],
          ],
          2.5,
        );
    }
  }
  drawTitleBlock(page, [right - BLOCK[0], bottom - BLOCK[1]], title, cells);
}

function drawTitleBlock(
  page: Page,
  [left, top]: Point,
  title: Frame["title"],
  cells: Frame["cells"],
): void {
  const [width, height] = BLOCK;
  drawBox(page, [left, top], [left + width, top + height], 5);
  drawText(page, title[0], [left + 30, top + 50], { size: 52, bold: true });
  drawText(page, title[1], [left + 30, top + 112], { size: 40 });
  const cellTop = top + 160;
  const cellWidth = width / 3;
  const cellHeight = (height - 160) / 2;
  cells.forEach(([heading, content], index) => {
    const x = left + (index % 3) * cellWidth;
    const y = cellTop + Math.floor(index / 3) * cellHeight;
    drawBox(page, [x, y], [x + cellWidth, y + cellHeight], 3);
    drawText(page, heading, [x + 12, y + 17], { size: 19 });
    drawText(page, content, [x + 24, y + 47], { size: 32 });
  });
}
