// @vitest-environment node
import { createCanvas, Path2D as NodePath } from "@napi-rs/canvas";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { drawScene } from "../../../../src/editor/boards/diagram/drawing/draw-scene.ts";
import { lineWidth } from "../../../../src/editor/boards/diagram/drawing/ink.ts";
import { createKeptView } from "../../../../src/editor/boards/diagram/drawing/kept-view.ts";
import { differences, type Traced } from "../../../../src/editor/boards/diagram/drawing/traced.ts";
import type { Palette } from "../../../../src/editor/theme/theme.tsx";
import type { Job } from "../../../../src/job/index.ts";
import type { Verdict } from "../../../../src/roles/index.ts";
import { sceneOf } from "../../../../src/session/index.ts";
import { bigJob } from "../../../support/big-job.ts";

const UNIT = 3;
const SIZE = { width: 1800, height: 1200 };
/** Near enough for words to be drawn, round A50 and what hangs on it. */
const CAMERA = { left: 1950, top: 650, zoom: 1.4 };
const PALETTE = new Proxy({}, { get: () => "#223344" }) as Palette;

beforeEach(() => {
  // Every painting seems slow, so that it is kept.
  let now = 0;
  vi.spyOn(performance, "now").mockImplementation(() => {
    now += 10;
    return now;
  });
  vi.stubGlobal("Path2D", NodePath);
  vi.stubGlobal("document", { createElement: () => createCanvas(1, 1) });
  vi.stubGlobal("window", { setTimeout });
});
afterEach(() => vi.unstubAllGlobals());

const tracedOf = (job: Job, verdicts: Traced["verdicts"] = new Map()): Traced => ({
  scene: sceneOf(job.diagram, "sheet1"),
  palette: PALETTE,
  verdicts,
  colours: true,
  typeset: true,
  operating: false,
  changes: null,
});

/** Shows one trace after another in the same view; the areas are those that the last one painted. */
function shown(traces: readonly Traced[]) {
  const view = createKeptView<Traced>(() => {});
  let areas: number[] = [];
  let pixels = new Uint8ClampedArray();
  for (const of of traces) {
    const screen = createCanvas(SIZE.width, SIZE.height);
    const canvas = screen.getContext("2d") as unknown as CanvasRenderingContext2D;
    const { scene } = of;
    areas = [];
    // The first time a painting proves slow, the second time it is kept.
    for (let time = 0; time < 2; time++) {
      canvas.clearRect(0, 0, SIZE.width, SIZE.height);
      view.draw(
        canvas,
        CAMERA,
        SIZE,
        of,
        scene?.bounds ?? null,
        (brush, camera, size) => {
          areas.push(size.width * size.height);
          if (scene) drawScene(brush, scene, camera, size, { ...of, unit: UNIT, passing: false });
        },
        (before) => differences(before, of, lineWidth(CAMERA, UNIT), UNIT),
      );
    }
    pixels = canvas.getImageData(0, 0, SIZE.width, SIZE.height).data as typeof pixels;
  }
  return { pixels, areas };
}

const changed = (change: (draft: Job) => void): { before: Job; after: Job } => {
  const before = bigJob(600);
  const after: Job = {
    ...before,
    diagram: {
      ...before.diagram,
      parts: [...before.diagram.parts],
      wires: [...before.diagram.wires],
    },
  };
  change(after);
  return { before, after };
};

/**
 * How many pixels of two pictures are plainly others. Edges may be smoothed a little differently:
 * lines are stroked together with those that are seen besides.
 */
function unlike(a: Uint8ClampedArray, b: Uint8ClampedArray): number {
  let count = 0;
  for (let at = 0; at < a.length; at += 4) {
    const shown = (of: Uint8ClampedArray, part: number) =>
      ((of[at + part] ?? 0) * (of[at + 3] ?? 0)) / 255;
    const isOther = [0, 1, 2].some((part) => Math.abs(shown(a, part) - shown(b, part)) > 24);
    const isThere = Math.abs((a[at + 3] ?? 0) - (b[at + 3] ?? 0)) > 48;
    if (isOther || isThere) count++;
  }
  return count;
}

/** Paints a job, then the changed one over it, and holds that against the changed one alone. */
function paintedLikeAllOfIt(change: (job: Job) => void): readonly number[] {
  const { before, after } = changed(change);
  const patched = shown([tracedOf(before), tracedOf(after)]);
  const fresh = shown([tracedOf(after)]);
  const old = shown([tracedOf(before)]);
  const differing = unlike(patched.pixels, old.pixels);
  expect(differing).toBeGreaterThan(200);
  expect(unlike(patched.pixels, fresh.pixels)).toBeLessThan(differing / 20);
  return patched.areas;
}

test("a printed word is painted in its place only, and like a painting of all of it", () => {
  const areas = paintedLikeAllOfIt(({ diagram: { parts } }) => {
    const at = parts.findIndex(({ id }) => id === "A50");
    const part = parts[at];
    if (part?.kind !== "module") throw new Error("no module");
    const pins = part.pins.map((pin) => ({ ...pin, printed: "LONG WORD" }));
    parts[at] = { ...part, pins };
  });
  expect(areas).toHaveLength(1);
  expect(areas[0]).toBeLessThan(0.6 * 1.6 * 1.6 * SIZE.width * SIZE.height);
});

test("a part moved, its wires with it, leaves nothing where it was", () => {
  paintedLikeAllOfIt((job) => {
    const at = job.diagram.parts.findIndex(({ id }) => id === "P50");
    const part = job.diagram.parts[at];
    if (part) job.diagram.parts[at] = { ...part, at: [part.at[0] + 20, part.at[1] + 12] };
  });
});

test("a wire gone leaves nothing where it was, and others hop no more over it", () => {
  paintedLikeAllOfIt((job) => {
    const at = job.diagram.wires.findIndex(({ to }) => to === "P50:1");
    job.diagram.wires.splice(at, 1);
  });
});

test("another verdict is painted at its module", () => {
  const job = bigJob(600);
  const verdict = (one: Verdict) => new Map([["A50:1", one]]);
  const found = differences(
    tracedOf(job, verdict("agrees")),
    tracedOf(job, verdict("contradicted")),
    lineWidth(CAMERA, UNIT),
    UNIT,
  );
  const module = sceneOf(job.diagram, "sheet1").partById.get("A50");
  expect(found?.boxes).toHaveLength(1);
  expect(found?.boxes[0]?.left).toBeLessThan(module?.box.left ?? 0);
});

test("nothing is painted where only the objects are others", () => {
  const job = bigJob(600);
  const again = { ...job, diagram: { ...job.diagram } };
  expect(shown([tracedOf(job), tracedOf(again)]).areas).toEqual([]);
});
