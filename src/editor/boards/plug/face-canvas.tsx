import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { Group, Layer, Stage } from "react-konva";
import { add, boundsOf, type Point } from "../../../base/index.ts";
import type { Plug } from "../../../job/index.ts";
import {
  cavityAt,
  cavityBeyond,
  type Direction,
  type FaceView,
  mirrorAxis,
  mirrorPoint,
  otherHalfOf,
  type Side,
  spacingOf,
  viewFrom,
} from "../../../plug/index.ts";
import { counterparts, type SessionState } from "../../../session/index.ts";
import { beginLinkDrag, registerAnchors, registerLinkTarget } from "../../link-drag.tsx";
import { useAnalysis, useSelected } from "../../session-context.tsx";
import { useTheme } from "../../theme/theme.tsx";
import {
  type Camera,
  type Framing,
  fitCamera,
  panBy,
  type Size,
  startCamera,
  toBoard,
  toFace,
  zoomAt,
} from "./camera.ts";
import { type CavityFacts, cavityFacts } from "./cavity-facts.ts";
import { layOutFace } from "./cavity-layout.ts";
import { CavityShape, type Light } from "./cavity-shape.tsx";
import { CavityTargets } from "./cavity-targets.tsx";
import styles from "./face-canvas.module.css";
import { FaceShape } from "./face-shape.tsx";
import { snapTo } from "./snap.ts";
import { type BoardPointer, useFaceGestures } from "./use-face-gestures.ts";
import { useFonts } from "./use-fonts.ts";
import { useMeasured } from "./use-measured.ts";
import { usePhoto } from "./use-photo.ts";
import { useSteady } from "./use-steady.ts";
import { useTurn } from "./use-turn.ts";

interface FaceCanvasProps {
  plug: Plug;
  /** The side looked at, where two views stand together; that of the board when absent. */
  side?: Side;
  /** Whether this is the mating face of the plug's other half: its wires are nobody's here. */
  otherHalf?: boolean;
  framing: Framing;
  onCamera: (camera: Camera) => void;
  /** Whether dragging moves cavities; else it ties them. */
  arranging: boolean;
  onTap: (facts: CavityFacts | null, at: Point) => void;
  onMenu: (facts: CavityFacts | null, pointer: BoardPointer) => void;
  onMove: (facts: CavityFacts, at: Point) => void;
  onKey: (facts: CavityFacts, event: React.KeyboardEvent) => void;
}

/** The leads to show in the cavities: those of the reading on the pad before those of operating. */
const leadsOf = (draft: SessionState["draft"], operate: SessionState["operate"]) =>
  operate.on && draft === null ? operate.leads : draft;

const heldByOther = (holds: Plug["holds"]) =>
  holds === "pins" ? "sockets" : holds === "sockets" ? "pins" : null;

/** In a small view beside another no verdict covers the mark: which cavity it is comes first. */
const besideFacts = (facts: CavityFacts): CavityFacts => ({ ...facts, verdict: null });

/** What is drawn of a cavity where there is no room for more; what is read out stays whole. */
const crowdedFacts = (facts: CavityFacts): CavityFacts => ({
  ...facts,
  colour: null,
  colourFrom: null,
  pin: null,
});

/** Pixels from cavity to cavity below which a small view has room for the marks alone. */
const CROWDED = 30;

/** What is known of a cavity of the other half: its mark, and nothing of what is behind it. */
const factsOfOtherHalf = (facts: CavityFacts): CavityFacts => ({
  ...facts,
  state: "plain",
  pin: null,
  colour: null,
  colourFrom: null,
  verdict: null,
  lead: null,
  live: null,
});

/** How near, in pixels, a dragged cavity jumps into line with another. */
const SNAP = 6;

function framed(framing: Framing, view: FaceView, size: Size, spacing: number): Camera {
  if (framing === "whole") return fitCamera(view.bounds, size, spacing);
  if (framing === "close") return fitCamera(view.bounds, size, spacing, "slight");
  if (framing !== "start") return framing;
  const cavities = boundsOf(view.cavities.map((cavity) => cavity.at));
  return startCamera(view.bounds, cavities, size, spacing);
}

/** The face as drawn, with everything that can be touched on it. Points handed out are stored millimetres. */
export function FaceCanvas(props: FaceCanvasProps) {
  const { plug, arranging, onCamera } = props;
  const { palette } = useTheme();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const boardSide = useSelected((state) => state.side);
  const side = props.side ?? boardSide;
  const otherHalf = props.otherHalf ?? false;
  const beside = props.side !== undefined;
  const red = useSelected(({ draft, operate }) => leadsOf(draft, operate)?.red ?? null);
  const black = useSelected(({ draft, operate }) => leadsOf(draft, operate)?.black ?? null);
  const selection = useSelected((state) => state.selection);
  const operating = useSelected((state) => state.operate.on && state.draft === null);
  const live = useSelected((state) => (state.operate.on ? state.operate.live : null));
  const analysis = useAnalysis();
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [moved, setMoved] = useState<{ index: number; at: Point } | null>(null);

  const view = useMemo(
    () => (otherHalf ? otherHalfOf(plug) : viewFrom(plug, side)),
    [plug, side, otherHalf],
  );
  const spacing = useMemo(() => spacingOf(plug.cavities), [plug.cavities]);
  const { framing } = props;
  const camera = useMemo(
    () => framed(framing, view, size, spacing),
    [framing, view, size, spacing],
  );
  const spacingPx = spacing * camera.scale;
  const crowded = beside && spacingPx < CROWDED;
  const facts = useSteady(
    useMemo(() => {
      const all = cavityFacts(job, machine, plug.id, view, analysis, { red, black }, live);
      return otherHalf ? all.map(factsOfOtherHalf) : beside ? all.map(besideFacts) : all;
    }, [job, machine, plug.id, view, analysis, red, black, live, otherHalf, beside]),
  );
  const drawn = useMemo(() => (crowded ? facts.map(crowdedFacts) : facts), [facts, crowded]);
  const lit = useMemo(
    () => counterparts(job, analysis, selection).refs,
    [job, analysis, selection],
  );
  const picture = usePhoto(view.photo?.file ?? null);
  const fonts = useFonts();
  const turn = useTurn(side);
  const axis = mirrorAxis(plug);
  const stored = mirrorPoint(plug, side);

  const placed = useMemo(
    () =>
      facts.map((one) => {
        const at = moved?.index === one.index ? moved.at : one.at;
        const turned: Point = [axis + (at[0] - axis) * turn, at[1]];
        return { facts: one, at: toBoard(camera, turned) };
      }),
    [facts, moved, axis, turn, camera],
  );

  // Laid out as the face will lie, not as it turns: words would jump about on the way.
  const layouts = useMemo(
    () =>
      layOutFace(
        drawn.map((one) => ({
          facts: one,
          at: toBoard(camera, moved?.index === one.index ? moved.at : one.at),
        })),
        spacingPx,
      ),
    [drawn, moved, camera, spacingPx],
  );

  const lightOf = (one: CavityFacts): Light =>
    selection.includes(one.ref) ? "chosen" : lit.has(one.ref) ? "lit" : null;

  const onBoard = ({ clientX, clientY }: BoardPointer): Point => {
    const box = gestures.ref.current?.getBoundingClientRect();
    return [clientX - (box?.left ?? 0), clientY - (box?.top ?? 0)];
  };
  const seenAt = (pointer: BoardPointer) => toFace(camera, onBoard(pointer));
  const cavityUnder = (pointer: BoardPointer) => {
    const reach = Math.max(22 / camera.scale, spacing / 2);
    return cavityAt(view, seenAt(pointer), reach)?.index ?? null;
  };
  const factsAt = (index: number | null) => (index === null ? null : (facts[index] ?? null));
  const draggedTo = (index: number, by: Point): Point => {
    const from = view.cavities[index]?.at ?? [0, 0];
    const to = add(from, [by[0] / camera.scale, by[1] / camera.scale]);
    const others = view.cavities.filter((cavity) => cavity.index !== index);
    return snapTo(
      to,
      others.map((cavity) => cavity.at),
      SNAP / camera.scale,
    );
  };

  const gestures = useFaceGestures({
    cavityUnder,
    tap: (index, pointer) => {
      const at = stored(seenAt(pointer));
      // A face that grows under the pointer would jump: what is seen now stays where it is.
      if (arranging && index === null) onCamera(camera);
      props.onTap(factsAt(index), at);
    },
    menu: (index, pointer) => props.onMenu(factsAt(index), pointer),
    dragFrom: (index, pointer) => {
      if (arranging) return true;
      const from = facts[index];
      if (from && !operating && !otherHalf) beginLinkDrag(from.ref, pointer);
      return false;
    },
    drag: (index, by) => setMoved({ index, at: draggedTo(index, by) }),
    drop: (index, by) => {
      setMoved(null);
      const from = facts[index];
      if (from && by) props.onMove(from, stored(draggedTo(index, by)));
    },
    pan: (by) => onCamera(panBy(latest.current.camera, by)),
    zoom: (factor, pointer) => onCamera(zoomAt(latest.current.camera, factor, onBoard(pointer))),
  });

  // Two moves may arrive before the board is drawn again: each goes on from the one before.
  const latest = useRef({ camera, placed, cavityUnder, facts });
  latest.current = { camera, placed, cavityUnder, facts };

  useMeasured(gestures.ref, setSize);

  useEffect(() => {
    if (otherHalf) return;
    const inside = (x: number, y: number) => {
      const box = gestures.ref.current?.getBoundingClientRect();
      return box && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom ? box : null;
    };
    const stopTarget = registerLinkTarget((clientX, clientY) => {
      if (!inside(clientX, clientY)) return null;
      const { cavityUnder, facts } = latest.current;
      const index = cavityUnder({ clientX, clientY });
      return index === null ? null : (facts[index]?.ref ?? null);
    });
    const stopAnchors = registerAnchors((ref) => {
      const at = latest.current.placed.find((one) => one.facts.ref === ref)?.at;
      const box = gestures.ref.current?.getBoundingClientRect();
      if (!at || !box) return null;
      const [x, y] = [box.left + at[0], box.top + at[1]];
      return inside(x, y) ? { x, y } : null;
    });
    return () => {
      stopTarget();
      stopAnchors();
    };
  }, [gestures.ref, otherHalf]);

  // What was chosen elsewhere comes into sight, should the user have zoomed in on another corner.
  const chief = selection[0];
  const bringIntoSight = useCallback(() => {
    // All of it is in sight as it is, however small the view has become meanwhile.
    if (framing === "close") return;
    const box = gestures.ref.current;
    const at = latest.current.placed.find((one) => one.facts.ref === chief)?.at;
    if (!box || !at) return;
    const visible = at[0] > 0 && at[1] > 0 && at[0] < box.clientWidth && at[1] < box.clientHeight;
    if (visible) return;
    const middle: Point = [box.clientWidth / 2, box.clientHeight / 2];
    onCamera(panBy(latest.current.camera, [middle[0] - at[0], middle[1] - at[1]]));
  }, [chief, framing, gestures.ref, onCamera]);
  useEffect(bringIntoSight, [bringIntoSight]);

  const step = (from: CavityFacts, direction: Direction) => {
    const next = cavityBeyond(view, from, direction);
    return next ? (facts[next.index] ?? null) : null;
  };

  return (
    <section
      ref={gestures.ref}
      {...gestures.handlers}
      className={styles.canvas}
      data-arranging={arranging}
      aria-label={
        otherHalf
          ? `Mating face of the other half of plug ${plug.id}`
          : `Face of plug ${plug.id}, seen from the ${side} side`
      }
    >
      {size.width > 0 && (
        <Stage width={size.width} height={size.height} listening={false} aria-hidden="true">
          <Layer listening={false}>
            <Group x={camera.x} y={camera.y} scaleX={camera.scale} scaleY={camera.scale}>
              <Group x={axis} offsetX={axis} scaleX={turn}>
                <FaceShape view={view} picture={picture} scale={camera.scale} palette={palette} />
              </Group>
            </Group>
          </Layer>
          <Layer key={fonts} listening={false}>
            {placed.map(({ facts: one, at }, index) => {
              const layout = layouts[index];
              return (
                layout && (
                  <CavityShape
                    key={`${one.index} ${one.mark}`}
                    facts={drawn[index] ?? one}
                    at={at}
                    layout={layout}
                    light={lightOf(one)}
                    holds={otherHalf ? heldByOther(plug.holds) : (plug.holds ?? null)}
                    rimmed={view.photo !== null}
                    palette={palette}
                  />
                )
              );
            })}
          </Layer>
        </Stage>
      )}
      <CavityTargets
        placed={placed}
        spacing={spacingPx}
        selection={selection}
        arranging={arranging}
        step={step}
        onTap={(one) => props.onTap(one, one.cavity.at)}
        onKey={props.onKey}
      />
    </section>
  );
}
