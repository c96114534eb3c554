import type { Point } from "../../../../base/index.ts";
import type { Colour, Id } from "../../../../job/index.ts";
import {
  type Crossing,
  crossingsOf,
  lengthOf,
  middleOfLongest,
  type Scene,
  unitOf,
  type WireShape,
} from "../../../../session/index.ts";
import { colourBands, formatColour } from "../../../../standards/index.ts";
import { type Ink, SMALLEST_TEXT, write } from "./ink.ts";

/** Radius of the hop over a wire that is crossed without touching, in line widths. */
const HOP = 3.2;

const NO_HOPS: readonly Crossing[] = [];

/** Adds the line of a wire to a path, with a hop at each crossing. */
export function traceWire(
  path: Path2D,
  points: readonly Point[],
  hops: readonly Crossing[],
  radius: number,
): void {
  path.moveTo(...(points[0] as [number, number]));
  let next = 0;
  for (let segment = 0; segment + 1 < points.length; segment++) {
    const a = points[segment] as Point;
    const b = points[segment + 1] as Point;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const [ux, uy] = length === 0 ? [0, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const angle = Math.atan2(uy, ux);
    let free = 0;
    while (hops[next]?.segment === segment) {
      const { along } = hops[next] as Crossing;
      next++;
      // Crossings closer than two hops share one; too near a corner there is no room for any.
      if (along - radius < free || along + radius > length) continue;
      path.lineTo(a[0] + ux * (along - radius), a[1] + uy * (along - radius));
      const clockwise = ux >= 0;
      path.arc(
        a[0] + ux * along,
        a[1] + uy * along,
        radius,
        angle + Math.PI,
        angle + (clockwise ? 2 * Math.PI : 0),
        !clockwise,
      );
      free = along + radius;
    }
    path.lineTo(b[0], b[1]);
  }
}

export interface Strands {
  /** Every wire's line. */
  readonly all: Path2D;
  readonly byColour: ReadonlyMap<string, { colour: Colour; path: Path2D }>;
}

function strandsOf(
  wires: readonly WireShape[],
  hops: ReadonlyMap<Id, readonly Crossing[]>,
  radius: number,
): Strands {
  const all = new Path2D();
  const byColour = new Map<string, { colour: Colour; path: Path2D }>();
  for (const { wire, points } of wires) {
    const over = hops.get(wire.id) ?? NO_HOPS;
    traceWire(all, points, over, radius);
    if (!wire.colour) continue;
    const code = formatColour(wire.colour);
    const strand = byColour.get(code) ?? { colour: wire.colour, path: new Path2D() };
    traceWire(strand.path, points, over, radius);
    byColour.set(code, strand);
  }
  return { all, byColour };
}

const wholeScenes = new WeakMap<Scene, { radius: number; strands: Strands }>();

/** The lines of wires, traced. Those of the whole scene are kept; a small part is quicker traced anew. */
export function strandsFor(
  ink: Ink,
  scene: Scene,
  visible: readonly WireShape[],
  hopping: boolean,
): Strands {
  const radius = ink.line * HOP;
  if (!hopping) return strandsOf(visible, new Map(), radius);
  if (visible.length < scene.wires.length * 0.5)
    return strandsOf(visible, crossingsOf(scene), radius);
  const known = wholeScenes.get(scene);
  if (known && known.radius === radius) return known.strands;
  const strands = strandsOf(scene.wires, crossingsOf(scene), radius);
  wholeScenes.set(scene, { radius, strands });
  return strands;
}

/** Clears paper around wires, so that their ink reads over the scan. */
export function drawWireHalos({ canvas, palette, line }: Ink, strands: Strands): void {
  canvas.strokeStyle = palette.paperRaised;
  canvas.lineWidth = line * 3;
  canvas.globalAlpha = 0.75;
  canvas.stroke(strands.all);
  canvas.globalAlpha = 1;
}

/** Draws wires in ink, and their true colours within the ink when asked. */
export function drawWires(
  { canvas, palette, line }: Ink,
  strands: Strands,
  colours: boolean,
): void {
  canvas.strokeStyle = palette.ink;
  canvas.lineWidth = line;
  canvas.stroke(strands.all);
  if (!colours) return;
  for (const { colour, path } of strands.byColour.values()) {
    canvas.strokeStyle = palette.ink;
    canvas.lineWidth = line * 2.4;
    canvas.stroke(path);
    const { base, stripe, edge } = colourBands(colour);
    canvas.strokeStyle = base;
    canvas.lineWidth = line * 1.6;
    canvas.stroke(path);
    if (!stripe) continue;
    canvas.setLineDash([line * 6, line * 4]);
    if (edge) {
      canvas.strokeStyle = edge;
      canvas.lineWidth = line * 1.1;
      canvas.stroke(path);
    }
    canvas.strokeStyle = stripe;
    canvas.lineWidth = line * 0.7;
    canvas.stroke(path);
    canvas.setLineDash([]);
  }
}

/** Number and colour code on each wire long enough to carry them. */
export function drawWireWords(ink: Ink, scene: Scene, visible: readonly WireShape[]): void {
  for (const { wire, points } of visible) {
    const text = [wire.number, wire.colour && formatColour(wire.colour)].filter(Boolean).join(" ");
    if (text === "") continue;
    const owner = scene.pins.get(wire.from);
    const part = owner && scene.partById.get(owner.ref.slice(0, owner.ref.indexOf(":")));
    const size = 1.25 * (part ? unitOf(part.part) : 10);
    if (size * ink.camera.zoom < SMALLEST_TEXT || lengthOf(points) < text.length * size) continue;
    const middle = middleOfLongest(points);
    if (!middle) continue;
    const upright = Math.abs(middle.way[1]) > Math.abs(middle.way[0]);
    const off = ink.line * 1.4 + size * 0.62;
    write(ink, {
      text,
      at: upright ? [middle.at[0] + off, middle.at[1]] : [middle.at[0], middle.at[1] - off],
      size,
      align: "center",
      turn: upright ? -90 : 0,
    });
  }
}
