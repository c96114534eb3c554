import { growBox } from "../../../../base/index.ts";
import type { PinRef } from "../../../../job/index.ts";
import type { Role } from "../../../../roles/index.ts";
import {
  type Camera,
  partsIn,
  type Scene,
  type ViewSize,
  viewBox,
  wiresIn,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import { drawModuleWords } from "./draw-module-words.ts";
import { drawParts, drawPartWords } from "./draw-parts.ts";
import { drawWires, drawWireWords } from "./draw-wires.ts";
import { inkFor, onSheet } from "./ink.ts";

export interface SceneLook {
  readonly palette: Palette;
  /** Pixels of the sheet per symbol unit, for the weight of lines. */
  readonly unit: number;
  readonly colours: boolean;
  readonly roles: ReadonlyMap<PinRef, Role>;
}

/** Draws everything traced that the camera sees: wires, symbols, then words. */
export function drawScene(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  camera: Camera,
  size: ViewSize,
  look: SceneLook,
): void {
  onSheet(canvas, camera, () => {
    const ink = inkFor(canvas, camera, look.palette, look.unit);
    // Words stand beside what they belong to.
    const seen = growBox(viewBox(camera, size), 6 * look.unit);
    const wires = wiresIn(scene, seen);
    const parts = partsIn(scene, seen);
    drawWires(ink, scene, wires, look.colours);
    drawParts(ink, parts);
    drawWireWords(ink, scene, wires);
    drawPartWords(ink, parts);
    drawModuleWords(ink, parts, look.roles);
  });
}
