import { add, type Point, scale } from "../../../../base/index.ts";
import { type Stroke, terminalOf, toSheet } from "../../../../circuit/index.ts";
import type { Part } from "../../../../job/index.ts";
import { type PartShape, unitOf } from "../../../../session/index.ts";
import { type Ink, trace, write } from "./ink.ts";
import { valueWords } from "./value-words.ts";

interface PartPaths {
  readonly lines: Path2D;
  readonly dashed: Path2D;
  readonly filled: Path2D;
  readonly texts: readonly Extract<Stroke, { draw: "text" }>[];
}

const paths = new WeakMap<PartShape, PartPaths>();

/** A page end that nobody has named: the line goes on, not traced. */
export const isUntraced = (part: Part): boolean =>
  terminalOf(part, "1") === "page-end" && !part.label;

/** Our own mark for a line that goes on: dots that thin out to an open tail. */
const GOES_ON: readonly Stroke[] = [
  {
    draw: "line",
    points: [
      [0, 0],
      [0.7, 0],
    ],
  },
  {
    draw: "line",
    points: [
      [1.2, 0],
      [1.7, 0],
    ],
  },
  {
    draw: "line",
    points: [
      [2.2, 0],
      [2.5, 0],
    ],
  },
  {
    draw: "line",
    points: [
      [2.4, -0.9],
      [3.3, 0],
      [2.4, 0.9],
    ],
  },
];

function pathsOf(shape: PartShape): PartPaths {
  const known = paths.get(shape);
  if (known) return known;
  const { part } = shape;
  const unit = unitOf(part);
  const lines = new Path2D();
  const dashed = new Path2D();
  const filled = new Path2D();
  const texts: Extract<Stroke, { draw: "text" }>[] = [];
  for (const stroke of isUntraced(part) ? GOES_ON : shape.strokes) {
    if (stroke.draw === "text") {
      texts.push(stroke);
      continue;
    }
    const path = stroke.draw !== "arc" && stroke.filled ? filled : lines;
    const at = (point: Point) => toSheet(part, point) as [number, number];
    if (stroke.draw === "line") {
      const target = stroke.dashed ? dashed : path;
      trace(target, stroke.points.map(at));
      if (stroke.closed) target.closePath();
      continue;
    }
    const [x, y] = at(stroke.at);
    const radius = stroke.radius * unit;
    const [from, to] = stroke.draw === "arc" ? [stroke.from, stroke.to] : [0, 360];
    const angle = (degrees: number) => ((degrees + part.turn) * Math.PI) / 180;
    path.moveTo(x + radius * Math.cos(angle(from)), y + radius * Math.sin(angle(from)));
    path.arc(x, y, radius, angle(from), angle(to));
  }
  const made = { lines, dashed, filled, texts };
  paths.set(shape, made);
  return made;
}

/** Clears paper around symbols, so that their ink reads over the scan. */
export function drawPartHalos(ink: Ink, visible: readonly PartShape[]): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.paperRaised;
  canvas.globalAlpha = 0.8;
  for (const shape of visible) {
    canvas.lineWidth = widthFor(ink, shape) * 3.4;
    canvas.stroke(pathsOf(shape).lines);
  }
  canvas.globalAlpha = 1;
}

/** Draws symbols in ink. */
export function drawParts(ink: Ink, visible: readonly PartShape[]): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.ink;
  canvas.fillStyle = palette.ink;
  for (const shape of visible) {
    const { lines, dashed, filled, texts } = pathsOf(shape);
    canvas.lineWidth = widthFor(ink, shape);
    canvas.stroke(lines);
    canvas.fill(filled);
    canvas.setLineDash([canvas.lineWidth * 4, canvas.lineWidth * 3]);
    canvas.stroke(dashed);
    canvas.setLineDash([]);
    for (const text of texts) {
      write(ink, {
        text: text.text,
        at: toSheet(shape.part, text.at),
        size: text.size * unitOf(shape.part),
        align: text.align === "centre" ? "center" : text.align,
      });
    }
    // An arrow head or a bar drawn filled must not vanish when it is seen from far.
    if (shape.strokes.length === 1 && shape.strokes[0]?.draw === "circle") drawDot(ink, shape);
  }
}

const LEAST_DOT_ON_SCREEN = 3;

function drawDot({ canvas, camera }: Ink, { part }: PartShape): void {
  const radius = LEAST_DOT_ON_SCREEN / camera.zoom;
  if (radius <= unitOf(part) * 0.4) return;
  canvas.beginPath();
  canvas.arc(part.at[0], part.at[1], radius, 0, 2 * Math.PI);
  canvas.fill();
}

const widthFor = (ink: Ink, { part }: PartShape) =>
  Math.max(unitOf(part) * 0.2, 1.6 / ink.camera.zoom);

/** Id, label and value beside each symbol: above what lies, to the right of what stands. */
export function drawPartWords(ink: Ink, visible: readonly PartShape[]): void {
  for (const { part, box, pins } of visible) {
    const unit = unitOf(part);
    const size = 1.6 * unit;
    const joint = pins.length === 1;
    const named = part.label || (joint ? part.place : "");
    if (isUntraced(part)) {
      write(ink, { ...beyond(part, 3.9), text: "goes on", size: 1.3 * unit });
      continue;
    }
    if (joint && terminalOf(part, "1") === "page-end") {
      write(ink, { ...beyond(part, 3.6), text: part.label ?? "", size });
      continue;
    }
    // A splice or ground of every sheet by its id would drown the rest.
    if (joint && !named) continue;
    const value = valueWords(part);
    const [first, second] = joint
      ? [named ?? "", ""]
      : [part.id, [part.label, value].filter(Boolean).join("  ")];
    const wide = box.right - box.left >= box.bottom - box.top;
    const middle: Point = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    if (wide && !joint) {
      const y = box.top - unit * 0.6;
      const at: Point = [middle[0], second ? y - size * 1.05 : y];
      write(ink, { text: first, at, size, align: "center", baseline: "bottom", bold: true });
      write(ink, {
        text: second,
        at: [middle[0], y],
        size: size * 0.85,
        align: "center",
        baseline: "bottom",
      });
    } else {
      const x = box.right + unit * 0.7;
      const y = second ? middle[1] - size * 0.55 : middle[1];
      write(ink, { text: first, at: [x, y], size, bold: true });
      write(ink, { text: second, at: [x, y + size * 1.1], size: size * 0.85 });
    }
  }
}

/** Where words stand past the tip of a page end, and how they are set there. */
function beyond(part: Part, reach: number): { at: Point; align: CanvasTextAlign } {
  const tip = toSheet(part, [reach, 0]);
  const way = scale(add(tip, scale(part.at, -1)), 1 / (reach * unitOf(part)));
  const align = way[0] > 0.5 ? "left" : way[0] < -0.5 ? "right" : "center";
  return { at: way[1] === 0 ? tip : add(tip, [0, way[1] * unitOf(part) * 0.4]), align };
}
