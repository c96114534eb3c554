import type Konva from "konva";
import { useEffect, useMemo, useRef, useState } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { growBox } from "../../../base/index.ts";
import { counterparts, pathRuns } from "../../../session/index.ts";
import { useAnalysis, useSelected, useSession } from "../../session-context.tsx";
import { useTheme } from "../../theme/theme.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import { drawScene } from "./drawing/draw-scene.ts";
import { drawTop, type TopLook } from "./drawing/draw-top.ts";
import { createKeptView, type Paint } from "./drawing/kept-view.ts";
import { drawPicture } from "./picture/draw-picture.ts";
import type { PictureTiles } from "./picture/picture-tiles.ts";

/** The bare canvas under a Konva context; drawing thousands of lines through wrappers is slow. */
const bare = (context: Konva.Context): CanvasRenderingContext2D =>
  (context as unknown as { _context: CanvasRenderingContext2D })._context;

/** Milliseconds that the path takes from the pin to its end. */
const PATH_TIME = 700;

const restful = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Three layers, each drawn anew only when what it shows has changed: picture, trace, and what is chosen. */
export function BoardCanvas({ tiles }: { tiles: PictureTiles | null }) {
  const board = useBoard();
  const session = useSession();
  const { palette } = useTheme();
  const analysis = useAnalysis();
  const job = useSelected((state) => state.job);
  const selection = useSelected((state) => state.selection);
  const sheet = useSelected((state) => state.sheet);
  const preview = useBoardState((state) => state.preview);
  const size = useBoardState((state) => state.size);
  const colours = useBoardState((state) => state.colours);
  const [typeset, setTypeset] = useState(false);

  const roles = useMemo(() => new Map(analysis.roles.map((role) => [role.pin, role])), [analysis]);
  const lit = useMemo(() => counterparts(job, analysis, selection), [job, analysis, selection]);
  const scene = useMemo(
    () => (job && (preview || sheet !== null) ? board.scene() : null),
    [board, job, preview, sheet],
  );
  const path = useMemo(() => {
    if (!scene) return [];
    const start = [...lit.refs].find((ref) => roles.has(ref)) ?? null;
    return pathRuns(scene, lit.path, start);
  }, [scene, lit, roles]);

  const look = useRef({ tiles, palette, roles, colours, lit, path, selection });
  look.current = { tiles, palette, roles, colours, lit, path, selection };
  const progress = useRef(Number.POSITIVE_INFINITY);
  const pictureLayer = useRef<Konva.Layer>(null);
  const traceLayer = useRef<Konva.Layer>(null);
  const topLayer = useRef<Konva.Layer>(null);

  const keptView = useMemo(() => createKeptView(() => traceLayer.current?.batchDraw()), []);
  // One object a look of the trace: another one, and what was kept of it is stale.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the trace shows
  const traced = useMemo(() => ({}), [scene, palette, roles, colours, typeset]);
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
        const passing = board.get().preview !== null;
        const sceneLook = { ...look.current, unit: board.unit(), passing };
        const paint: Paint = (canvas, camera, view) =>
          drawScene(canvas, now, camera, view, sceneLook);
        const { size: view } = board.get();
        // Every step of a drag is another drawing: nothing of it is worth keeping.
        if (passing) paint(bare(context), board.camera(), view);
        else {
          const room = now.bounds && growBox(now.bounds, 12 * board.unit());
          keptView.draw(bare(context), board.camera(), view, stamp.current, room, paint);
        }
      },
      top: (context: Konva.Context) => {
        const topLook: TopLook = { ...look.current, progress: progress.current };
        drawTop(bare(context), board, topLook);
      },
    }),
    [board, keptView],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what each layer shows
  useEffect(() => {
    pictureLayer.current?.batchDraw();
  }, [tiles, size, sheet]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what each layer shows
  useEffect(() => {
    traceLayer.current?.batchDraw();
    topLayer.current?.batchDraw();
  }, [traced, lit, size, sheet]);

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
  useEffect(() => session.subscribe(() => topLayer.current?.batchDraw()), [session]);
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
      <Layer ref={pictureLayer} listening={false}>
        <Shape sceneFunc={draw.picture} listening={false} />
      </Layer>
      <Layer ref={traceLayer} listening={false}>
        <Shape sceneFunc={draw.trace} listening={false} />
      </Layer>
      <Layer ref={topLayer} listening={false}>
        <Shape sceneFunc={draw.top} listening={false} />
      </Layer>
    </Stage>
  );
}
