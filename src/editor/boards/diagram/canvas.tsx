import type Konva from "konva";
import { useEffect, useMemo, useRef, useState } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { growBox } from "../../../base/index.ts";
import { changesDrawn, drawnOf, pathRuns } from "../../../session/index.ts";
import { useAnalysis, useSelected } from "../../session-context.tsx";
import { useTheme } from "../../theme/theme.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import { boundsWithGone, drawAdded, drawGone } from "./drawing/draw-changes.ts";
import { drawScene } from "./drawing/draw-scene.ts";
import { drawTop, type TopLook } from "./drawing/draw-top.ts";
import { lineWidth } from "./drawing/ink.ts";
import { createKeptView, type Paint } from "./drawing/kept-view.ts";
import { differences, type Traced } from "./drawing/traced.ts";
import { useLit } from "./drawing/use-lit.ts";
import { useVerdicts } from "./drawing/use-verdicts.ts";
import { useLiveDrawing } from "./live/use-live-drawing.ts";
import { drawPicture } from "./picture/draw-picture.ts";
import type { PictureTiles } from "./picture/picture-tiles.ts";
import { watchScan } from "./scan/scan-layers.ts";

/** The bare canvas under a Konva context; drawing thousands of lines through wrappers is slow. */
const bare = (context: Konva.Context): CanvasRenderingContext2D =>
  (context as unknown as { _context: CanvasRenderingContext2D })._context;

/** Milliseconds that the path takes from the pin to its end. */
const PATH_TIME = 700;

const restful = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Three layers, each drawn anew only when what it shows has changed: picture, trace, and what is chosen. */
export function BoardCanvas({ tiles }: { tiles: PictureTiles | null }) {
  const board = useBoard();
  const { palette } = useTheme();
  const analysis = useAnalysis();
  const job = useSelected((state) => state.job);
  const drawn = useSelected(drawnOf);
  const selection = useSelected((state) => state.selection);
  const sheet = useSelected((state) => state.sheet);
  const changes = useSelected((state) => changesDrawn(state.job, state.machine));
  const preview = useBoardState((state) => state.preview);
  const size = useBoardState((state) => state.size);
  const colours = useBoardState((state) => state.colours);
  const operating = useSelected((state) => state.operate.on);
  const operated = useSelected((state) => (state.operate.on ? state.operate.live : null));
  const tool = useSelected((state) => state.tool);
  const reading = useSelected((state) => state.draft !== null);
  const [typeset, setTypeset] = useState(false);

  const verdicts = useVerdicts(analysis);
  const lit = useLit(job, analysis, selection);
  const scene = useMemo(
    () => (drawn && (preview || sheet !== null) ? board.scene() : null),
    [board, drawn, preview, sheet],
  );
  const path = useMemo(() => {
    // The way of the current is what counts on a machine being operated.
    if (!scene || operating) return [];
    const start = [...lit.refs].find((ref) => verdicts.has(ref)) ?? null;
    return pathRuns(scene, lit.path, start);
  }, [scene, lit, verdicts, operating]);

  const look = useRef({ tiles, palette, lit, path, selection });
  look.current = { tiles, palette, lit, path, selection };
  const progress = useRef(Number.POSITIVE_INFINITY);
  const pictureLayer = useRef<Konva.Layer>(null);
  const traceLayer = useRef<Konva.Layer>(null);
  const topLayer = useRef<Konva.Layer>(null);

  const live = useLiveDrawing(board, traceLayer);
  const liveDraw = live.draw;

  const keptView = useMemo(() => createKeptView<Traced>(() => traceLayer.current?.batchDraw()), []);
  const traced = useMemo<Traced>(
    () => ({ scene, palette, verdicts, colours, typeset, operating, changes }),
    [scene, palette, verdicts, colours, typeset, operating, changes],
  );
  const stamp = useRef(traced);
  stamp.current = traced;

  const draw = useMemo(
    () => ({
      picture: (context: Konva.Context) => {
        const { tiles: cut } = look.current;
        if (cut) drawPicture(bare(context), cut, board.camera(), board.get().size);
      },
      trace: (context: Konva.Context) => {
        const now = board.scene();
        if (!now) return;
        const shown = stamp.current;
        const { changes: own } = shown;
        if (shown.operating) liveDraw.under(context);
        const passing = board.get().preview !== null;
        const sceneLook = { ...shown, unit: board.unit(), passing };
        const paint: Paint = (canvas, camera, view) => {
          if (own) drawGone(canvas, now, own, camera, view, sceneLook);
          drawScene(canvas, now, camera, view, sceneLook);
          if (own) drawAdded(canvas, now, own, camera, view, sceneLook);
        };
        const { size: view } = board.get();
        // Every step of a drag is another drawing: nothing of it is worth keeping.
        if (passing) paint(bare(context), board.camera(), view);
        else {
          const all = boundsWithGone(now, own);
          const room = all && growBox(all, 12 * board.unit());
          const camera = board.camera();
          const unit = board.unit();
          const line = lineWidth(camera, unit);
          keptView.draw(bare(context), camera, view, shown, room, paint, (before) =>
            differences(before, shown, line, unit),
          );
        }
      },
      top: (context: Konva.Context) => {
        const topLook: TopLook = { ...look.current, progress: progress.current };
        drawTop(bare(context), board, topLook);
      },
    }),
    [board, keptView, liveDraw],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what each layer shows
  useEffect(() => {
    pictureLayer.current?.batchDraw();
  }, [tiles, size, sheet]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what each layer shows
  useEffect(() => {
    traceLayer.current?.batchDraw();
  }, [traced, size, sheet]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what each layer shows
  useEffect(() => {
    topLayer.current?.batchDraw();
  }, [traced, lit, path, selection, tool, reading, operated, size, sheet]);

  useEffect(() => {
    let camera = board.camera();
    return board.subscribe(() => {
      const now = board.camera();
      topLayer.current?.batchDraw();
      if (now === camera) return;
      camera = now;
      pictureLayer.current?.batchDraw();
      traceLayer.current?.batchDraw();
    });
  }, [board]);
  useEffect(() => watchScan(board.session, () => topLayer.current?.batchDraw()), [board]);
  useEffect(() => {
    // Words are drawn with the typeface once it has arrived.
    document.fonts?.ready.then(() => setTypeset(true));
  }, []);

  const pathIds = lit.path.join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs anew for another path, not for a pan
  useEffect(() => {
    if (pathIds === "" || restful()) {
      progress.current = Number.POSITIVE_INFINITY;
      return;
    }
    const whole = Math.max(0, ...look.current.path.map((run) => run.start + run.length));
    const began = performance.now();
    let frame = requestAnimationFrame(function step(now) {
      const share = Math.min(1, (now - began) / PATH_TIME);
      progress.current = share === 1 ? Number.POSITIVE_INFINITY : whole * share;
      topLayer.current?.batchDraw();
      if (share < 1) frame = requestAnimationFrame(step);
    });
    return () => {
      cancelAnimationFrame(frame);
      progress.current = Number.POSITIVE_INFINITY;
    };
  }, [pathIds, sheet]);

  if (size.width === 0 || size.height === 0) return null;
  return (
    <Stage width={size.width} height={size.height} listening={false}>
      <Layer ref={pictureLayer} listening={false} opacity={operating ? 0.3 : 1}>
        <Shape sceneFunc={draw.picture} listening={false} />
      </Layer>
      <Layer ref={traceLayer} listening={false}>
        <Shape sceneFunc={draw.trace} listening={false} />
      </Layer>
      {operating && (
        <Layer ref={live.over} listening={false}>
          <Shape sceneFunc={live.draw.over} listening={false} />
        </Layer>
      )}
      {operating && (
        <Layer ref={live.moving} listening={false}>
          <Shape sceneFunc={live.draw.moving} listening={false} />
        </Layer>
      )}
      <Layer ref={topLayer} listening={false}>
        <Shape sceneFunc={draw.top} listening={false} />
      </Layer>
    </Stage>
  );
}
