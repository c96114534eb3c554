import type { Point } from "../../../../base/index.ts";
import { kindOf } from "../../../../circuit/index.ts";
import type { Part } from "../../../../job/index.ts";
import {
  type Counterparts,
  handlesOf,
  liesOnWire,
  orthogonalCorners,
  type PathRun,
  partsIn,
  type Scene,
  type Snap,
  shapeOf,
  viewBox,
  wayOut,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import type { Board } from "../board.ts";
import { drawLiveWords } from "../live/draw-live-parts.ts";
import { drawScan } from "../scan/scan-layers.ts";
import {
  drawBand,
  drawChosen,
  drawHandles,
  drawLit,
  drawPath,
  drawPinRing,
  drawWireInHand,
} from "./draw-overlay.ts";
import { drawParts } from "./draw-parts.ts";
import { inkFor, onSheet } from "./ink.ts";

export interface TopLook {
  readonly palette: Palette;
  readonly lit: Counterparts;
  readonly path: readonly PathRun[];
  readonly selection: readonly string[];
  /** How far the path is drawn, pixels of the sheet. */
  readonly progress: number;
}

/** The points of a wire in hand, from its start through its fixed corners to the pointer. */
export function pointsInHand(
  board: Board,
  start: Snap,
  corners: readonly Point[],
  target: Snap,
  free: boolean,
): Point[] {
  const last = corners.at(-1) ?? start.at;
  const fixed = [start.at, ...corners];
  if (free) return [...fixed, target.at];
  const out = corners.length === 0 ? wayOut(start, target.at) : null;
  const back = wayOut(target, last);
  const scene = board.scene();
  // Nearer than this two lines look like one.
  const gap = board.unit() * 0.6;
  const between = orthogonalCorners({ at: last, out }, { at: target.at, out: back }, (a, b) =>
    scene ? liesOnWire(scene, a, b, gap) : false,
  );
  return [...fixed, ...between, target.at];
}

/** The layer over the trace: what lights up, what is chosen, what is being drawn, and the path. */
export function drawTop(canvas: CanvasRenderingContext2D, board: Board, look: TopLook): void {
  const state = board.get();
  const scene = board.scene();
  const camera = board.camera();
  const { tool, selection, draft, operate } = board.session.get();
  onSheet(canvas, camera, () => {
    const ink = inkFor(canvas, camera, look.palette, board.unit());
    drawScan(ink, board);
    if (scene) {
      drawLit(ink, scene, look.lit.refs);
      drawPath(ink, look.path, look.progress);
      drawChosen(ink, scene, selection);
      const idle = tool.name === "select" && !draft && !state.preview && !operate.on;
      if (idle) drawHandles(ink, handlesOf(scene, selection, 1 / camera.zoom));
      if (state.hover?.on === "pin") drawPinRing(ink, state.hover.at);
      if (operate.on && operate.live) {
        drawLiveWords(ink, partsIn(scene, viewBox(camera, state.size)), operate.live);
      }
    }
    if (state.rewire) drawWireInHand(ink, state.rewire.points, state.rewire.onto);
    if (state.band) drawBand(ink, state.band);
    if (state.ghost) {
      canvas.globalAlpha = 0.6;
      drawParts(ink, [shapeOf(ghostPart(board, state.ghost))]);
      canvas.globalAlpha = 1;
    }
    if (tool.name !== "wire") return;
    if (state.wire) {
      const { start, corners, target } = state.wire;
      drawWireInHand(ink, pointsInHand(board, start, corners, target, tool.free), target.onto);
    } else if (scene) drawStart(ink, scene, state.hover);
  });
}

/** Where a wire would begin if the pointer were pressed now. */
function drawStart(
  ink: ReturnType<typeof inkFor>,
  scene: Scene,
  hover: ReturnType<Board["get"]>["hover"],
): void {
  if (hover?.on !== "wire") return;
  if (scene.wireById.has(hover.wire)) drawWireInHand(ink, [hover.spot.at], "wire");
}

function ghostPart(
  board: Board,
  { kind, at, turn }: NonNullable<ReturnType<Board["get"]>["ghost"]>,
): Part {
  const { job, sheet } = board.session.get();
  return {
    ...kindOf(kind).defaults(job.systemVoltage),
    id: "",
    kind,
    sheet: sheet ?? "",
    at: [at[0], at[1]],
    turn,
    unit: board.unit(),
  } as Part;
}
