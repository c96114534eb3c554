import { type Box, boundsOf, growBox, type Point } from "../../../../base/index.ts";
import { toSheet } from "../../../../circuit/index.ts";
import {
  type Camera,
  type ChangesDrawn,
  middleOfLongest,
  type PartShape,
  partsIn,
  type Scene,
  sceneOf,
  unitOf,
  type ViewSize,
  viewBox,
  wiresIn,
} from "../../../../session/index.ts";
import { drawParts } from "./draw-parts.ts";
import type { SceneLook } from "./draw-scene.ts";
import { type Ink, inkFor, onSheet, trace, write } from "./ink.ts";

/** Symbol units between the ticks on a wire that was added, and half the length of one. */
const TICK_EVERY = 2.5;
const TICK_HALF = 0.55;
/** Nearer than this on the screen ticks would be a grey line, pixels. */
const LEAST_TICK_GAP = 7;

/** Around all that is drawn of a sheet, with what the machine is without. */
export function boundsWithGone(scene: Scene, changes: ChangesDrawn | null): Box | null {
  const boxes = [scene.bounds, changes && sceneOf(changes.ghosts, scene.sheet).bounds];
  return boundsOf(
    boxes.flatMap((box): Point[] =>
      box
        ? [
            [box.left, box.top],
            [box.right, box.bottom],
          ]
        : [],
    ),
  );
}

/** What the machine is without, faint, dotted and crossed out: drawn under all that is there. */
export function drawGone(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  changes: ChangesDrawn,
  camera: Camera,
  size: ViewSize,
  look: SceneLook,
): void {
  const ghosts = sceneOf(changes.ghosts, scene.sheet);
  onSheet(canvas, camera, () => {
    const ink = inkFor(canvas, camera, look.palette, look.unit);
    const seen = growBox(viewBox(camera, size), 6 * look.unit);
    const soft: Ink = { ...ink, palette: { ...ink.palette, ink: ink.palette.inkSoft } };
    canvas.strokeStyle = ink.palette.inkSoft;
    canvas.lineWidth = ink.line;
    // Where another was put in its place only that one is drawn.
    const laid = new Set(scene.wires.map(({ points }) => points.join()));
    for (const { points } of wiresIn(ghosts, seen)) {
      if (laid.has(points.join())) continue;
      canvas.setLineDash([ink.line, ink.line * 3]);
      canvas.beginPath();
      trace(canvas, points);
      canvas.stroke();
      canvas.setLineDash([]);
      const middle = middleOfLongest(points);
      if (middle) cross(ink, middle.at, 0.8 * look.unit);
    }
    const taken = new Set(scene.parts.map(({ part }) => part.at.join()));
    for (const shape of partsIn(ghosts, seen)) {
      if (!changes.goneParts.has(shape.part.id) || taken.has(shape.part.at.join())) continue;
      canvas.globalAlpha = 0.5;
      drawParts(soft, [shape]);
      canvas.globalAlpha = 1;
      canvas.strokeStyle = ink.palette.inkSoft;
      canvas.lineWidth = ink.line * 1.4;
      strikeOut(ink, shape);
      const { box } = shape;
      write(soft, {
        text: shape.part.id,
        at: [(box.left + box.right) / 2, box.top - unitOf(shape.part) * 0.6],
        size: 1.5 * unitOf(shape.part),
        align: "center",
        baseline: "bottom",
        struck: true,
      });
    }
  });
}

/** The marks of what was added on this machine, over what is drawn: ticked wires, framed parts with a plus. */
export function drawAdded(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  changes: ChangesDrawn,
  camera: Camera,
  size: ViewSize,
  look: SceneLook,
): void {
  onSheet(canvas, camera, () => {
    const ink = inkFor(canvas, camera, look.palette, look.unit);
    const seen = growBox(viewBox(camera, size), 6 * look.unit);
    canvas.strokeStyle = ink.palette.ink;
    canvas.lineWidth = ink.line;
    const gap = Math.max(TICK_EVERY * look.unit, LEAST_TICK_GAP / camera.zoom);
    canvas.beginPath();
    for (const { wire, points } of wiresIn(scene, seen)) {
      if (changes.added.has(wire.id)) tick(canvas, points, gap, TICK_HALF * look.unit);
    }
    canvas.stroke();
    for (const shape of partsIn(scene, seen)) {
      // a joint is no more than a dot: its ticked wires tell
      if (changes.added.has(shape.part.id) && shape.part.kind !== "splice") frame(ink, shape);
    }
  });
}

function tick(
  canvas: CanvasRenderingContext2D,
  points: readonly Point[],
  gap: number,
  half: number,
): void {
  points.slice(1).forEach((b, index) => {
    const a = points[index] as Point;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < gap) return;
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const count = Math.floor(length / gap);
    // About the middle of the segment, so that both of its ends look alike.
    for (let n = 0; n < count; n++) {
      const along = length / 2 + (n - (count - 1) / 2) * gap;
      const [x, y] = [a[0] + ux * along, a[1] + uy * along];
      canvas.moveTo(x - uy * half, y + ux * half);
      canvas.lineTo(x + uy * half, y - ux * half);
    }
  });
}

/** The corners of a part's box with some room around it, turned with it. */
function corners({ part, local }: PartShape, room: number): readonly Point[] {
  const around: Point[] = [
    [local.left - room, local.top - room],
    [local.right + room, local.top - room],
    [local.right + room, local.bottom + room],
    [local.left - room, local.bottom + room],
  ];
  return around.map((corner) => toSheet(part, corner));
}

function frame(ink: Ink, shape: PartShape): void {
  const { canvas, palette } = ink;
  const around = corners(shape, 0.8);
  canvas.lineWidth = ink.line;
  canvas.setLineDash([ink.line * 5, ink.line * 2.5, ink.line, ink.line * 2.5]);
  canvas.beginPath();
  trace(canvas, around);
  canvas.closePath();
  canvas.stroke();
  canvas.setLineDash([]);
  const right = Math.max(...around.map(([x]) => x));
  const top = Math.min(...around.map(([, y]) => y));
  const radius = Math.max(0.9 * unitOf(shape.part), 6 / ink.camera.zoom);
  canvas.beginPath();
  canvas.arc(right, top, radius, 0, 2 * Math.PI);
  canvas.fillStyle = palette.paperRaised;
  canvas.fill();
  canvas.stroke();
  canvas.beginPath();
  canvas.moveTo(right - radius * 0.55, top);
  canvas.lineTo(right + radius * 0.55, top);
  canvas.moveTo(right, top - radius * 0.55);
  canvas.lineTo(right, top + radius * 0.55);
  canvas.stroke();
}

/** Two strokes from corner to corner. */
function strikeOut({ canvas }: Ink, shape: PartShape): void {
  const [a, b, c, d] = corners(shape, 0.3) as [Point, Point, Point, Point];
  canvas.beginPath();
  canvas.moveTo(a[0], a[1]);
  canvas.lineTo(c[0], c[1]);
  canvas.moveTo(b[0], b[1]);
  canvas.lineTo(d[0], d[1]);
  canvas.stroke();
}

function cross({ canvas }: Ink, [x, y]: Point, half: number): void {
  canvas.beginPath();
  canvas.moveTo(x - half, y - half);
  canvas.lineTo(x + half, y + half);
  canvas.moveTo(x - half, y + half);
  canvas.lineTo(x + half, y - half);
  canvas.stroke();
}
