import type { Point } from "../../../../base/index.ts";
import type { Camera } from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";

/** A canvas in pixels of the sheet, and what a brush needs to know to draw on it. */
export interface Ink {
  readonly canvas: CanvasRenderingContext2D;
  readonly camera: Camera;
  readonly palette: Palette;
  /** Width of a plain line, pixels of the sheet: never thinner than the eye can follow. */
  readonly line: number;
}

/** Symbol units in a plain line's width. */
const LINE_UNITS = 0.17;
const THINNEST_ON_SCREEN = 1.5;

export function inkFor(
  canvas: CanvasRenderingContext2D,
  camera: Camera,
  palette: Palette,
  unit: number,
): Ink {
  return { canvas, camera, palette, line: lineWidth(camera, unit) };
}

/** Width of a plain line, pixels of the sheet. */
export const lineWidth = (camera: Camera, unit: number): number =>
  Math.max(unit * LINE_UNITS, THINNEST_ON_SCREEN / camera.zoom);

/** Runs `draw` with the canvas in pixels of the sheet. */
export function onSheet(canvas: CanvasRenderingContext2D, camera: Camera, draw: () => void): void {
  canvas.save();
  canvas.scale(camera.zoom, camera.zoom);
  canvas.translate(-camera.left, -camera.top);
  canvas.lineJoin = "round";
  canvas.lineCap = "round";
  draw();
  canvas.restore();
}

/** Goes along the points, in a path that is begun already. */
export function trace(
  path: CanvasRenderingContext2D | Path2D,
  points: readonly (readonly [x: number, y: number])[],
): void {
  points.forEach(([x, y], index) => {
    if (index === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  });
}

export const FONT = '"IBM Plex Sans", system-ui, sans-serif';
/** Smaller than this on the screen, words are a smear and are left out. */
export const SMALLEST_TEXT = 6;

export interface Words {
  readonly text: string;
  readonly at: Point;
  /** Height of the type, pixels of the sheet. */
  readonly size: number;
  readonly align?: CanvasTextAlign;
  readonly baseline?: CanvasTextBaseline;
  readonly colour?: string;
  readonly bold?: boolean;
  /** Degrees clockwise. */
  readonly turn?: number;
  readonly struck?: boolean;
}

/** Writes words with a halo of paper, so that they read over a scan. Returns their width, pixels of the sheet. */
export function write({ canvas, camera, palette }: Ink, words: Words): number {
  const { text, at, size, align = "left", baseline = "middle", turn = 0 } = words;
  if (size * camera.zoom < SMALLEST_TEXT || text === "") return 0;
  canvas.save();
  canvas.translate(at[0], at[1]);
  if (turn !== 0) canvas.rotate((turn * Math.PI) / 180);
  canvas.font = `${words.bold ? "600 " : ""}${size}px ${FONT}`;
  canvas.textAlign = align;
  canvas.textBaseline = baseline;
  canvas.strokeStyle = palette.paperRaised;
  canvas.lineWidth = size * 0.28;
  canvas.strokeText(text, 0, 0);
  canvas.fillStyle = words.colour ?? palette.ink;
  canvas.fillText(text, 0, 0);
  const width = canvas.measureText(text).width;
  if (words.struck) {
    const left =
      align === "right" || align === "end" ? -width : align === "center" ? -width / 2 : 0;
    canvas.fillRect(left - size * 0.1, -size * 0.06, width + size * 0.2, size * 0.12);
  }
  canvas.restore();
  return width;
}
