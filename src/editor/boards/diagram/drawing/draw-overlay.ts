import type { Box, Point } from "../../../../base/index.ts";
import { toSheet } from "../../../../circuit/index.ts";
import {
  type Handle,
  type PartShape,
  type PathRun,
  type Scene,
  shownOf,
  unitOf,
} from "../../../../session/index.ts";
import { type Ink, trace } from "./ink.ts";

function outline(canvas: CanvasRenderingContext2D, { part, local }: PartShape, slack: number) {
  const by = slack / unitOf(part);
  const corners: Point[] = [
    [local.left - by, local.top - by],
    [local.right + by, local.top - by],
    [local.right + by, local.bottom + by],
    [local.left - by, local.bottom + by],
  ];
  canvas.beginPath();
  trace(
    canvas,
    corners.map((corner) => toSheet(part, corner)),
  );
  canvas.closePath();
}

const pixels = (ink: Ink, count: number) => count / ink.camera.zoom;

/** Underlays for what lights up with the selection. */
export function drawLit(ink: Ink, scene: Scene, refs: ReadonlySet<string>): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.accent;
  canvas.globalAlpha = 0.35;
  canvas.lineWidth = ink.line * 3 + pixels(ink, 5);
  canvas.beginPath();
  for (const ref of refs) {
    const wire = scene.wireById.get(ref);
    if (wire) trace(canvas, wire.points);
  }
  canvas.stroke();
  canvas.globalAlpha = 1;
  canvas.lineWidth = pixels(ink, 2.5);
  for (const ref of refs) {
    const spot = scene.pins.get(ref);
    if (!spot) continue;
    canvas.beginPath();
    canvas.arc(...(spot.at as [number, number]), pixels(ink, 7), 0, 2 * Math.PI);
    canvas.stroke();
  }
}

/** The chosen things themselves, framed. */
export function drawChosen(ink: Ink, scene: Scene, selection: readonly string[]): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.accent;
  canvas.fillStyle = palette.accent;
  for (const ref of selection) {
    const part = scene.partById.get(ref);
    const wire = scene.wireById.get(ref);
    const spot = scene.pins.get(ref);
    canvas.lineWidth = pixels(ink, 2);
    if (part) {
      outline(canvas, part, pixels(ink, 5));
      canvas.globalAlpha = 0.1;
      canvas.fill();
      canvas.globalAlpha = 1;
      canvas.setLineDash([pixels(ink, 6), pixels(ink, 4)]);
      canvas.stroke();
      canvas.setLineDash([]);
    } else if (wire) {
      canvas.lineWidth = ink.line + pixels(ink, 3);
      canvas.beginPath();
      trace(canvas, wire.points);
      canvas.stroke();
    } else if (spot) {
      canvas.beginPath();
      canvas.arc(...(spot.at as [number, number]), pixels(ink, 6), 0, 2 * Math.PI);
      canvas.fill();
      canvas.beginPath();
      canvas.arc(...(spot.at as [number, number]), pixels(ink, 10), 0, 2 * Math.PI);
      canvas.stroke();
    }
  }
}

export function drawHandles(ink: Ink, handles: readonly Handle[]): void {
  const { canvas, palette } = ink;
  canvas.lineWidth = pixels(ink, 2);
  canvas.strokeStyle = palette.accent;
  canvas.fillStyle = palette.paperRaised;
  for (const { grab, at } of handles) {
    const [x, y] = at;
    const size = pixels(ink, grab === "corner" ? 4.5 : 5.5);
    canvas.beginPath();
    if (grab === "size" || grab === "corner") canvas.rect(x - size, y - size, 2 * size, 2 * size);
    else if (grab === "scale") {
      canvas.moveTo(x + size, y - size);
      canvas.lineTo(x + size, y + size);
      canvas.lineTo(x - size, y + size);
      canvas.closePath();
    } else canvas.arc(x, y, size * (grab === "turn" ? 1.3 : 1.15), 0, 2 * Math.PI);
    canvas.fill();
    canvas.stroke();
    if (grab !== "turn") continue;
    canvas.beginPath();
    canvas.arc(x, y, size * 0.6, -0.4 * Math.PI, Math.PI);
    canvas.stroke();
  }
}

/** A box being drawn over the sheet. */
export function drawBand({ canvas, camera, palette }: Ink, box: Box): void {
  canvas.lineWidth = 1.5 / camera.zoom;
  canvas.strokeStyle = palette.accent;
  canvas.fillStyle = palette.accent;
  canvas.globalAlpha = 0.12;
  canvas.fillRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
  canvas.globalAlpha = 1;
  canvas.strokeRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
}

/** A wire being laid: its line so far, and a sign of what its end would join. */
export function drawWireInHand(
  ink: Ink,
  points: readonly Point[],
  onto: "pin" | "wire" | "ground" | null,
): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.accent;
  canvas.fillStyle = palette.accent;
  canvas.lineWidth = ink.line + pixels(ink, 1.5);
  canvas.beginPath();
  trace(canvas, points);
  canvas.stroke();
  const end = points.at(-1) as [number, number] | undefined;
  if (!end) return;
  canvas.beginPath();
  if (onto === "pin") {
    canvas.arc(...end, pixels(ink, 9), 0, 2 * Math.PI);
    canvas.stroke();
  } else if (onto === "wire") {
    canvas.arc(...end, pixels(ink, 6), 0, 2 * Math.PI);
    canvas.fill();
  }
}

export function drawPinRing(ink: Ink, at: Point): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.accent;
  canvas.lineWidth = pixels(ink, 2);
  canvas.beginPath();
  canvas.arc(at[0], at[1], pixels(ink, 8), 0, 2 * Math.PI);
  canvas.stroke();
}

/** The proving path over everything, as far as `progress` pixels of the sheet from its pin. */
export function drawPath(ink: Ink, runs: readonly PathRun[], progress: number): void {
  const { canvas, palette } = ink;
  canvas.lineWidth = ink.line * 1.5 + pixels(ink, 5);
  for (const [colour, alpha, narrower] of [
    [palette.paperRaised, 0.7, -pixels(ink, 3)],
    [palette.path, 0.9, 0],
  ] as const) {
    canvas.strokeStyle = colour;
    canvas.globalAlpha = alpha;
    canvas.lineWidth = ink.line * 1.5 + pixels(ink, 5) - narrower;
    canvas.beginPath();
    for (const run of runs) trace(canvas, shownOf(run, progress));
    canvas.stroke();
  }
  canvas.globalAlpha = 1;
}
