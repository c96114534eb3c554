import { type Point, sameList } from "../../../../base/index.ts";
import type { LiveState } from "../../../../circuit/index.ts";
import {
  type Camera,
  LEAST_AMPS,
  lengthOf,
  pointAlong,
  type Scene,
  type ViewSize,
  viewBox,
  type WireShape,
  wiresIn,
} from "../../../../session/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import { inkFor, onSheet } from "../drawing/ink.ts";
import { slimness } from "./draw-live-wires.ts";

/** A wire that carries current, its points from where the current comes to where it goes. */
interface Flow {
  readonly points: readonly Point[];
  readonly length: number;
  /** How heavy its chevrons are, line widths. */
  readonly weight: number;
}

/** The wires in sight that carry current. */
export interface Flows {
  readonly flows: readonly Flow[];
  /** See `slimness`. */
  readonly slim: number;
}

/** Looks the wires up anew only for another state or another view: chevrons move without that. */
export function keptFlows() {
  let key: readonly unknown[] = [];
  let kept: Flows = { flows: [], slim: 1 };
  return {
    of(scene: Scene, live: LiveState, camera: Camera, size: ViewSize): Flows {
      const now = [scene, live, camera, size];
      if (sameList(now, key)) return kept;
      key = now;
      const wires = wiresIn(scene, viewBox(camera, size));
      const flows = wires.flatMap((shape) => flowOf(shape, live) ?? []);
      kept = { flows, slim: slimness(wires.length, scene, camera, size) };
      return kept;
    },
  };
}

function flowOf({ wire, points }: WireShape, live: LiveState): Flow | null {
  const amps = live.wires[wire.id]?.amps ?? 0;
  if (Math.abs(amps) < LEAST_AMPS) return null;
  return {
    points: amps > 0 ? points : [...points].reverse(),
    length: lengthOf(points),
    weight: weightOf(Math.abs(amps)),
  };
}

/** Signals, loads, and what melts: three weights the eye can tell apart. */
const WEIGHTS = [1, 1.5, 2.2] as const;
const weightOf = (amps: number) => WEIGHTS[amps < 0.2 ? 0 : amps < 5 ? 1 : 2];

/** Between two chevrons of a wire, pixels of the screen. */
const APART = 46;
/** Pixels of the screen that a chevron travels in a second. */
const SPEED = 30;
/** More than these and the board shows only every second, third ... of them. */
const MOST = 900;

/**
 * Chevrons along every wire that carries current, pointing the way it flows. `seconds` moves them
 * along; null lets them rest.
 */
export function drawFlow(
  canvas: CanvasRenderingContext2D,
  { flows, slim }: Flows,
  camera: Camera,
  palette: Palette,
  unit: number,
  seconds: number | null,
): void {
  const px = 1 / camera.zoom;
  const whole = flows.reduce((sum, flow) => sum + flow.length, 0);
  const apart = Math.max(APART * px, whole / MOST);
  onSheet(canvas, camera, () => {
    const line = inkFor(canvas, camera, palette, unit).line * slim;
    for (const weight of WEIGHTS) {
      const path = new Path2D();
      for (const flow of flows) {
        if (flow.weight !== weight || flow.length < 8 * px) continue;
        const count = Math.max(1, Math.round(flow.length / apart));
        const step = flow.length / count;
        const share = seconds === null ? 0.5 : ((seconds * SPEED * px) / step) % 1;
        for (let n = 0; n < count; n++)
          addChevron(path, flow.points, (n + share) * step, line, weight);
      }
      canvas.strokeStyle = palette.paperRaised;
      canvas.lineWidth = line * (1.6 + weight * 1.1);
      canvas.stroke(path);
      canvas.strokeStyle = palette.ink;
      canvas.lineWidth = line * (0.5 + weight * 0.6);
      canvas.stroke(path);
    }
  });
}

function addChevron(
  path: Path2D,
  points: readonly Point[],
  along: number,
  line: number,
  weight: number,
): void {
  const spot = pointAlong(points, along);
  if (!spot) return;
  const [x, y] = spot.at;
  const [ux, uy] = spot.way;
  const back = line * (2 + weight * 0.7);
  const wide = line * (3.6 + weight * 0.7);
  path.moveTo(x - ux * back - uy * wide, y - uy * back + ux * wide);
  path.lineTo(x + ux * back * 0.4, y + uy * back * 0.4);
  path.lineTo(x - ux * back + uy * wide, y - uy * back - ux * wide);
}
