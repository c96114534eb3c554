import type { Point } from "../../../../base/index.ts";
import type { NetRun } from "../../../../scan/index.ts";
import {
  type DoubtfulPlace,
  degreesOf,
  type Scene,
  type WholeNet,
} from "../../../../session/index.ts";
import { type Ink, trace, write } from "../drawing/ink.ts";

const pixels = (ink: Ink, count: number) => count / ink.camera.zoom;

function lines({ canvas }: Ink, net: WholeNet): void {
  canvas.beginPath();
  for (const { points } of net.runs) trace(canvas, points);
}

/** A net that the pointer is over. */
export function drawHovered(ink: Ink, net: WholeNet): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.accent;
  canvas.globalAlpha = 0.45;
  canvas.lineWidth = ink.line + pixels(ink, 6);
  lines(ink, net);
  canvas.stroke();
  canvas.globalAlpha = 1;
}

/** A net that is proposed: dashed, as what is not there yet. */
export function drawGhost(ink: Ink, net: WholeNet, isSure: boolean): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = isSure ? palette.accent : palette.warning;
  canvas.lineWidth = ink.line + pixels(ink, 2);
  canvas.setLineDash(isSure ? [pixels(ink, 10), pixels(ink, 5)] : [pixels(ink, 2), pixels(ink, 6)]);
  lines(ink, net);
  canvas.stroke();
  canvas.setLineDash([]);
}

/**
 * A net lit up: a tube along its lines, a dot at each joint, an open square where it goes on, and its
 * pins ringed and named.
 */
export function drawLitNet(ink: Ink, net: WholeNet, scene: Scene | null): void {
  const { canvas, palette } = ink;
  const wide = ink.line + pixels(ink, 7);
  for (const [colour, width] of [
    [palette.paperRaised, wide + pixels(ink, 4)],
    [palette.accent, wide],
    [palette.paperRaised, Math.max(pixels(ink, 1.5), wide - pixels(ink, 5))],
  ] as const) {
    canvas.strokeStyle = colour;
    canvas.lineWidth = width;
    lines(ink, net);
    canvas.stroke();
  }
  const degrees = degreesOf(net);
  net.nodes.forEach(({ at, terminals }, node) => {
    if (terminals.length > 0) return;
    if ((degrees[node] ?? 0) > 2) drawJoint(ink, at);
    else if (degrees[node] === 1) drawGoesOn(ink, at);
  });
  for (const ref of net.terminals) {
    const spot = scene?.pins.get(ref);
    if (spot) drawPin(ink, ref, spot.at, spot.out);
  }
}

function drawJoint({ canvas, palette, camera }: Ink, [x, y]: Point): void {
  canvas.fillStyle = palette.accent;
  canvas.beginPath();
  canvas.arc(x, y, 7 / camera.zoom, 0, 2 * Math.PI);
  canvas.fill();
}

/** An open square: a line ends here and nothing is placed. */
function drawGoesOn(ink: Ink, [x, y]: Point): void {
  const { canvas, palette } = ink;
  const half = pixels(ink, 6);
  canvas.fillStyle = palette.paperRaised;
  canvas.strokeStyle = palette.accent;
  canvas.lineWidth = pixels(ink, 2.5);
  canvas.beginPath();
  canvas.rect(x - half, y - half, 2 * half, 2 * half);
  canvas.fill();
  canvas.stroke();
}

function drawPin(ink: Ink, ref: string, at: Point, out: Point | null): void {
  const { canvas, palette } = ink;
  canvas.strokeStyle = palette.paperRaised;
  canvas.lineWidth = pixels(ink, 6);
  canvas.beginPath();
  canvas.arc(at[0], at[1], pixels(ink, 9), 0, 2 * Math.PI);
  canvas.stroke();
  canvas.strokeStyle = palette.accent;
  canvas.lineWidth = pixels(ink, 3);
  canvas.stroke();
  // On the side of the part, clear of the line that leaves it.
  const [dx, dy] = out ?? [0, 1];
  const size = pixels(ink, 15);
  write(ink, {
    text: ref,
    at: [at[0] - dx * pixels(ink, 14), at[1] - dy * pixels(ink, 20) - (dx === 0 ? 0 : size)],
    size,
    align: dx > 0.5 ? "right" : dx < -0.5 ? "left" : "center",
    colour: palette.accent,
    bold: true,
  });
}

/** Radius of a doubtful place's mark, pixels of the view. */
const MARK = 12;

/** A round question mark where the picture can't tell; once answered, what was said. */
export function drawPlace(ink: Ink, place: DoubtfulPlace, isOpen: boolean): void {
  const { canvas, palette } = ink;
  const { at, question } = place;
  const isAsked = question !== null;
  const radius = pixels(ink, isAsked ? MARK : MARK - 2);
  // Beside the place itself, which is to be seen.
  const [x, y] = markOf(at, ink.camera.zoom);
  canvas.lineWidth = pixels(ink, 2);
  canvas.strokeStyle = isAsked ? palette.warning : palette.inkSoft;
  canvas.beginPath();
  canvas.moveTo(at[0], at[1]);
  canvas.lineTo(x, y);
  canvas.stroke();
  canvas.fillStyle = isOpen ? palette.warning : palette.paperRaised;
  canvas.beginPath();
  canvas.arc(x, y, radius, 0, 2 * Math.PI);
  canvas.fill();
  canvas.stroke();
  const colour = isOpen ? palette.paperRaised : palette.ink;
  if (isAsked) {
    canvas.fillStyle = colour;
    canvas.font = `700 ${pixels(ink, 17)}px "IBM Plex Sans", system-ui, sans-serif`;
    canvas.textAlign = "center";
    canvas.textBaseline = "middle";
    canvas.fillText("?", x, y + pixels(ink, 1));
    return;
  }
  canvas.strokeStyle = colour;
  canvas.lineWidth = pixels(ink, 2.5);
  canvas.beginPath();
  const by = pixels(ink, 4.5);
  if (place.joined) {
    canvas.moveTo(x - by, y);
    canvas.lineTo(x - by * 0.2, y + by * 0.8);
    canvas.lineTo(x + by, y - by * 0.8);
  } else {
    canvas.moveTo(x - by, y - by);
    canvas.lineTo(x + by, y + by);
    canvas.moveTo(x + by, y - by);
    canvas.lineTo(x - by, y + by);
  }
  canvas.stroke();
}

/** The stretch that may be no line, dashed in another colour than the net that it is taken for a part of. */
export function drawStretch(ink: Ink, { points }: NetRun): void {
  const { canvas, palette } = ink;
  canvas.beginPath();
  trace(canvas, points);
  for (const [colour, width] of [
    [palette.paperRaised, 11],
    [palette.warning, 6],
  ] as const) {
    canvas.strokeStyle = colour;
    canvas.lineWidth = ink.line + pixels(ink, width);
    if (colour === palette.warning) canvas.setLineDash([pixels(ink, 8), pixels(ink, 7)]);
    canvas.stroke();
  }
  canvas.setLineDash([]);
}

/** A ring about a line's end where nothing is placed, to be seen from afar. */
export function drawOpenEnd(ink: Ink, { at }: DoubtfulPlace, isOpen: boolean): void {
  const { canvas, palette } = ink;
  for (const [colour, width] of [
    [palette.paperRaised, 6],
    [palette.warning, isOpen ? 4 : 2.5],
  ] as const) {
    canvas.strokeStyle = colour;
    canvas.lineWidth = pixels(ink, width);
    canvas.beginPath();
    canvas.arc(at[0], at[1], pixels(ink, MARK + 3), 0, 2 * Math.PI);
    canvas.stroke();
  }
}

/** Where the mark of a doubtful place stands: up and to the right of it. */
export const markOf = ([x, y]: Point, zoom: number): Point => [x + 20 / zoom, y - 20 / zoom];
