import type Konva from "konva";
import { type RefObject, useEffect, useMemo, useRef } from "react";
import { growBox } from "../../../../base/index.ts";
import type { LiveState } from "../../../../circuit/index.ts";
import { partsIn, viewBox } from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { useTheme } from "../../../theme/theme.tsx";
import type { Board } from "../board.ts";
import { inkFor, onSheet } from "../drawing/ink.ts";
import { createKeptView, type Paint } from "../drawing/kept-view.ts";
import { drawFlow, keptFlows } from "./draw-flow.ts";
import { drawLeads } from "./draw-leads.ts";
import { drawLiveParts } from "./draw-live-parts.ts";
import { drawCasings, drawLooseWires, slimness, wiresByState } from "./draw-live-wires.ts";

const bare = (context: Konva.Context): CanvasRenderingContext2D =>
  (context as unknown as { _context: CanvasRenderingContext2D })._context;

const restful = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Milliseconds between two drawings of what moves: enough for the eye, and half the work. */
const FRAME = 32;

interface LiveDrawing {
  readonly over: RefObject<Konva.Layer | null>;
  readonly moving: RefObject<Konva.Layer | null>;
  readonly draw: Readonly<Record<"under" | "over" | "moving", (context: Konva.Context) => void>>;
}

/**
 * What a machine that is being operated adds to the board: casings under the trace, in its layer;
 * parts and loose wires over it; and the current on top. The first two are painted anew only when
 * the machine's state changes; what moves is drawn by itself.
 */
export function useLiveDrawing(board: Board, under: RefObject<Konva.Layer | null>): LiveDrawing {
  const session = useSession();
  const { palette } = useTheme();
  const on = useSelected((state) => state.operate.on);
  const live = useSelected((state) => (state.operate.on ? state.operate.live : null));
  const leads = useSelected((state) => state.operate.leads);
  const sheet = useSelected((state) => state.sheet);
  const diagram = useSelected((state) => state.job.diagram);
  const over = useRef<Konva.Layer>(null);
  const moving = useRef<Konva.Layer>(null);
  const began = useRef(0);
  const flowing = useRef(keptFlows());

  const kept = useMemo(
    () => ({
      under: createKeptView(() => under.current?.batchDraw()),
      over: createKeptView(() => over.current?.batchDraw()),
    }),
    [under],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the painted layers show
  const stamp = useMemo(() => ({}), [live, palette, diagram, sheet]);
  const look = useRef({ live, palette, stamp });
  look.current = { live, palette, stamp };

  const draw = useMemo(() => {
    const painted =
      (which: "under" | "over", paint: (live: LiveState) => Paint) => (context: Konva.Context) => {
        const now = board.scene();
        const { live: state, stamp: of } = look.current;
        if (!now || !state) return;
        const room = now.bounds && growBox(now.bounds, 12 * board.unit());
        const { size } = board.get();
        kept[which].draw(bare(context), board.camera(), size, of, room, paint(state));
      };
    return {
      under: painted("under", (state) => (canvas, camera, size) => {
        const scene = board.scene();
        if (!scene) return;
        const casing = { palette: look.current.palette, unit: board.unit(), live: state };
        drawCasings(canvas, scene, camera, size, casing);
      }),
      over: painted("over", (state) => (canvas, camera, size) => {
        const scene = board.scene();
        if (!scene) return;
        onSheet(canvas, camera, () => {
          const ink = inkFor(canvas, camera, look.current.palette, board.unit());
          const { found, count } = wiresByState(scene, state, camera, size);
          drawLooseWires(ink, found, slimness(count, scene, camera, size));
          const seen = growBox(viewBox(camera, size), 6 * board.unit());
          drawLiveParts(ink, partsIn(scene, seen), state);
        });
      }),
      moving: (context: Konva.Context) => {
        const scene = board.scene();
        const { live: state, palette: colours } = look.current;
        if (!scene || !state) return;
        const [camera, canvas] = [board.camera(), bare(context)];
        const flow = flowing.current.of(scene, state, camera, board.get().size);
        const seconds = restful() ? null : (performance.now() - began.current) / 1000;
        drawFlow(canvas, flow, camera, colours, board.unit(), seconds);
        const { job, operate } = session.get();
        onSheet(canvas, camera, () => {
          drawLeads(inkFor(canvas, camera, colours, board.unit()), scene, job, operate.leads);
        });
      },
    };
  }, [board, kept, session]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what the layers show
  useEffect(() => {
    under.current?.batchDraw();
    over.current?.batchDraw();
    moving.current?.batchDraw();
  }, [stamp, leads, on]);

  useEffect(() => {
    if (!on) return;
    let camera = board.camera();
    let { size } = board.get();
    return board.subscribe(() => {
      if (board.camera() === camera && board.get().size === size) return;
      camera = board.camera();
      size = board.get().size;
      for (const layer of [over, moving]) layer.current?.batchDraw();
    });
  }, [board, on]);

  const flows = useMemo(
    () => live !== null && Object.values(live.wires).some((wire) => wire.amps !== 0),
    [live],
  );
  useEffect(() => {
    if (!on || !flows || restful()) return;
    let last = 0;
    let frame = requestAnimationFrame(function step(now) {
      if (now - last >= FRAME) {
        last = now;
        moving.current?.batchDraw();
      }
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [on, flows]);

  return { over, moving, draw };
}
