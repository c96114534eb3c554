import { growBox } from "../../../../base/index.ts";
import type { PinRef } from "../../../../job/index.ts";
import type { Verdict } from "../../../../roles/index.ts";
import {
  type Camera,
  partsIn,
  runsThrough,
  type Scene,
  type ViewSize,
  viewBox,
  wiresIn,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import { drawModuleWords } from "./draw-module-words.ts";
import { drawPartHalos, drawParts, drawPartWords } from "./draw-parts.ts";
import { drawWireHalos, drawWires, drawWireWords, strandsFor } from "./draw-wires.ts";
import { inkFor, onSheet } from "./ink.ts";

export interface SceneLook {
  readonly palette: Palette;
  /** Pixels of the sheet per symbol unit, for the weight of lines. */
  readonly unit: number;
  readonly colours: boolean;
  readonly verdicts: ReadonlyMap<PinRef, Verdict>;
  /** Seen only in passing, as in a drag: hops that take long to find are left out. */
  readonly passing: boolean;
  /** The wires lie on casings that say what is live: paper round them would cut those. */
  readonly operating: boolean;
}

/** So many wires cross one another in more places than can be found anew in every frame. */
const MANY_WIRES = 1000;

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
    const wires = wiresIn(scene, seen).filter((wire) => runsThrough(wire, seen));
    const parts = partsIn(scene, seen);
    // All halos first: the halo of one must not cut the ink of another.
    const bare = look.passing && scene.wires.length > MANY_WIRES;
    const strands = strandsFor(ink, scene, wires, !bare);
    if (!look.operating) drawWireHalos(ink, strands);
    drawPartHalos(ink, parts);
    drawWires(ink, strands, look.colours);
    drawParts(ink, parts);
    drawWireWords(ink, scene, wires);
    drawPartWords(ink, parts);
    drawModuleWords(ink, parts, look.verdicts);
  });
}
