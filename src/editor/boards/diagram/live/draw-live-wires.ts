import { addTo, type Point } from "../../../../base/index.ts";
import type { LineState, LiveState } from "../../../../circuit/index.ts";
import {
  type Camera,
  middleOfLongest,
  type Scene,
  type ViewSize,
  viewBox,
  type WireShape,
  wiresIn,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import { type Ink, inkFor, onSheet, trace, write } from "../drawing/ink.ts";

/** Wires in sight by how they lie. */
export type WiresByState = ReadonlyMap<LineState, readonly WireShape[]>;

export interface LiveLook {
  readonly palette: Palette;
  /** Pixels of the sheet per symbol unit. */
  readonly unit: number;
  readonly live: LiveState;
}

export function wiresByState(scene: Scene, live: LiveState, camera: Camera, size: ViewSize) {
  const found = new Map<LineState, WireShape[]>();
  let count = 0;
  for (const shape of wiresIn(scene, viewBox(camera, size))) {
    const state = live.wires[shape.wire.id]?.state;
    if (!state) continue;
    count++;
    addTo(found, state, shape);
  }
  return { found: found as WiresByState, count };
}

/** Square pixels of the view that a wire with its casing wants for itself. */
const ROOM = 4500;
const SLIMMEST = 0.4;

/** The closer the wires in sight lie, the thinner their casings and arrows, so that they stay apart. */
export function slimness(count: number, scene: Scene, { zoom }: Camera, size: ViewSize): number {
  const { left, right, top, bottom } = scene.bounds ?? { left: 0, right: 0, top: 0, bottom: 0 };
  const width = Math.min(size.width, (right - left) * zoom);
  const height = Math.min(size.height, (bottom - top) * zoom);
  const share = Math.sqrt((width * height) / (ROOM * Math.max(1, count)));
  return Math.max(SLIMMEST, Math.min(1, share));
}

const pathOf = (wires: readonly WireShape[]): Path2D => {
  const path = new Path2D();
  for (const { points } of wires) trace(path, points);
  return path;
};

/** How a state is cased, in line widths. The wire itself, with its colour, is drawn over it. */
interface Casing {
  readonly width: number;
  /** Left clear along the middle; absent for a solid casing. */
  readonly hollow?: number;
  readonly dash?: readonly [on: number, off: number];
  readonly ticks?: boolean;
}

const CASINGS: Readonly<Partial<Record<LineState, Casing>>> = {
  live: { width: 5, ticks: true },
  "live-through-load": { width: 5.4, hollow: 3.4, ticks: true },
  between: { width: 5.4, hollow: 3.4, dash: [7, 4] },
  "ground-through-load": { width: 6.4, dash: [1.1, 6] },
  ground: { width: 6.4, dash: [1.1, 2.2] },
};

/** Under the wires: heavy ink for what is live, hatching for what is grounded. */
export function drawCasings(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  camera: Camera,
  size: ViewSize,
  look: LiveLook,
): void {
  const { found, count } = wiresByState(scene, look.live, camera, size);
  onSheet(canvas, camera, () => {
    const ink = inkFor(canvas, camera, look.palette, look.unit);
    const slim = slimness(count, scene, camera, size);
    canvas.lineCap = "butt";
    // Ground first: where two meet, what is live must be seen.
    for (const state of Object.keys(CASINGS).reverse() as LineState[]) {
      const wires = found.get(state);
      const casing = CASINGS[state];
      if (wires && casing) drawCasing(ink, pathOf(wires), wires, casing, slim);
    }
  });
}

function drawCasing(
  { canvas, palette, line }: Ink,
  path: Path2D,
  wires: readonly WireShape[],
  { width, hollow, dash, ticks }: Casing,
  slim: number,
): void {
  const by = line * slim;
  canvas.strokeStyle = palette.paperRaised;
  canvas.lineWidth = (width + 2) * by;
  canvas.stroke(path);
  canvas.strokeStyle = palette.ink;
  canvas.lineWidth = width * by;
  if (dash) canvas.setLineDash(dash.map((part) => part * by));
  canvas.stroke(path);
  canvas.setLineDash([]);
  if (hollow) {
    canvas.strokeStyle = palette.paperRaised;
    canvas.lineWidth = hollow * by;
    canvas.stroke(path);
    canvas.strokeStyle = palette.ink;
  }
  if (!ticks || slim < 0.8) return;
  canvas.lineWidth = 1.2 * by;
  canvas.beginPath();
  for (const { points } of wires) addTicks(canvas, points, 4 * by, 30 * by);
  canvas.stroke();
}

/** Short strokes across the line, evenly along each segment. */
function addTicks(
  canvas: CanvasRenderingContext2D,
  points: readonly Point[],
  reach: number,
  apart: number,
): void {
  alongSegments(points, apart, ([x, y], [ux, uy]) => {
    canvas.moveTo(x - uy * reach, y + ux * reach);
    canvas.lineTo(x + uy * reach, y - ux * reach);
  });
}

/** Calls `at` at even distances along each segment that is long enough for one. */
export function alongSegments(
  points: readonly Point[],
  apart: number,
  at: (point: Point, way: Point) => void,
): void {
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const count = Math.floor(length / apart + 0.25);
    if (count === 0) continue;
    const way: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    for (let n = 0; n < count; n++) {
      const along = (length * (n + 0.5)) / count;
      at([a[0] + way[0] * along, a[1] + way[1] * along], way);
    }
  }
}

/** Over the wires: what is tied to nothing is dotted, what nobody can tell is broken by question marks. */
export function drawLooseWires(ink: Ink, found: WiresByState, slim: number): void {
  const { canvas, palette, line } = ink;
  const by = line * slim;
  const floating = found.get("floating");
  canvas.lineCap = "butt";
  canvas.strokeStyle = palette.paperRaised;
  if (floating) {
    canvas.lineWidth = 4.4 * by;
    canvas.setLineDash([3.4 * by, 2.6 * by]);
    canvas.stroke(pathOf(floating));
  }
  const unknown = found.get("unknown");
  if (unknown) {
    canvas.lineWidth = 4.4 * by;
    canvas.setLineDash([4 * by, 12 * by]);
    canvas.stroke(pathOf(unknown));
  }
  canvas.setLineDash([]);
  canvas.lineCap = "round";
  for (const { points } of unknown ?? []) {
    const middle = middleOfLongest(points);
    if (!middle) continue;
    const height = 9 * by;
    write(ink, { text: "?", at: middle.at, size: height, align: "center", bold: true });
  }
}
