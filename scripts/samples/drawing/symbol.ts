import { turn } from "../../../src/base/index.ts";
import { DEFAULT_UNIT, strokesOf, toSheet } from "../../../src/circuit/index.ts";
import type { Part } from "../../../src/job/index.ts";
import { drawLine, drawText, type Page } from "./page.ts";

/** Draws a part in the very strokes that the board lays over the picture. */
export function drawSymbol(page: Page, part: Part, width: number): void {
  const { pen } = page;
  const unit = part.unit ?? DEFAULT_UNIT;
  for (const stroke of strokesOf(part)) {
    switch (stroke.draw) {
      case "line": {
        const points = stroke.points.map((point) => toSheet(part, point));
        const first = points[0];
        if (stroke.filled) {
          pen.beginPath();
          for (const [x, y] of points) pen.lineTo(x, y);
          pen.fill();
        }
        pen.setLineDash(stroke.dashed ? [unit * 0.5, unit * 0.4] : []);
        drawLine(page, stroke.closed && first ? [...points, first] : points, width);
        pen.setLineDash([]);
        break;
      }
      case "circle": {
        const [x, y] = toSheet(part, stroke.at);
        pen.lineWidth = width;
        pen.beginPath();
        pen.arc(x, y, stroke.radius * unit, 0, 2 * Math.PI);
        if (stroke.filled) pen.fill();
        pen.stroke();
        break;
      }
      case "arc": {
        const [x, y] = toSheet(part, stroke.at);
        const radians = (degrees: number) => ((degrees + part.turn) * Math.PI) / 180;
        pen.lineWidth = width;
        pen.beginPath();
        pen.arc(x, y, stroke.radius * unit, radians(stroke.from), radians(stroke.to));
        pen.stroke();
        break;
      }
      case "text": {
        const align = stroke.align === "centre" ? "center" : stroke.align;
        // upright whatever the part's turn: a word that ran to the right of its point runs with it
        const upright = turn([1, 0], part.turn)[0] < -0.5;
        drawText(page, stroke.text, toSheet(part, stroke.at), {
          size: stroke.size * unit,
          align: upright && align === "left" ? "right" : align,
        });
        break;
      }
    }
  }
}
