import { type KeyboardEvent, useRef } from "react";
import { type Box, distance, type Point } from "../../../base/index.ts";
import type { Squaring } from "../../../scan/index.ts";
import { ARROW_STEPS } from "../../arrow-steps.ts";
import { CORNER_NAMES, GRAB } from "./corner-handles.ts";
import styles from "./picture-stage.module.css";
import type { StageView } from "./picture-stage.tsx";
import { croppedTo, type Size, uncutSize } from "./square-work.ts";

type Change = (change: (squaring: Squaring) => Squaring, intention?: string) => void;

const cornersOf = ({ left, top, right, bottom }: Box): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

/** A drag from a corner of the box moves it, any other one makes a new box of what is to stay. */
export function useCropGestures(squaring: Squaring, size: Size, onSquaring: Change) {
  const held = useRef<{ anchor: Point; offset: Point; drag: string } | null>(null);
  const drags = useRef(0);
  const result = uncutSize(squaring, size);
  const whole = {
    left: 0,
    top: 0,
    right: (result?.width ?? 1) - 1,
    bottom: (result?.height ?? 1) - 1,
  };
  const set = (a: Point, b: Point, intention: string) =>
    onSquaring((now) => croppedTo(now, a, b, size), intention);
  const drag = (to: Point) => {
    const what = held.current;
    if (!what) return;
    set(what.anchor, [to[0] + what.offset[0], to[1] + what.offset[1]], what.drag);
  };
  const release = () => {
    held.current = null;
  };
  return {
    set,
    gestures: {
      onBegin: (from: Point, to: Point, view: StageView) => {
        const corners = cornersOf(squaring.crop ?? whole);
        const at = view.toView(from);
        const near = corners.findIndex((corner) => distance(view.toView(corner), at) <= GRAB);
        const corner = corners[near];
        drags.current++;
        held.current = {
          anchor: corners[(near + 2) % 4] as Point,
          offset: corner ? [corner[0] - from[0], corner[1] - from[1]] : [0, 0],
          drag: `cut ${drags.current}`,
        };
        if (!corner) held.current.anchor = from;
        drag(to);
        return true;
      },
      onDrag: drag,
      onDrop: (to: Point) => {
        drag(to);
        release();
      },
      onBroken: release,
    },
  };
}

interface CropLayerProps {
  crop: Box;
  result: Size;
  onCrop: (a: Point, b: Point, intention: string) => void;
  view: StageView;
}

/** What is cut off, darkened, and the four corners of what stays. */
export function CropLayer({ crop, result, onCrop, view }: CropLayerProps) {
  const corners = cornersOf(crop);
  const edges = (box: Box) => {
    const [left, top] = view.toView([box.left - 0.5, box.top - 0.5]);
    const [right, bottom] = view.toView([box.right + 0.5, box.bottom + 0.5]);
    return `M${left} ${top}H${right}V${bottom}H${left}Z`;
  };
  const whole = { left: 0, top: 0, right: result.width - 1, bottom: result.height - 1 };
  const nudge = (n: number, event: KeyboardEvent) => {
    const by = ARROW_STEPS[event.key];
    if (!by || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    // What a screen can show at once, or a single pixel.
    const far = event.shiftKey ? 1 : Math.max(1, Math.round(8 / view.scale));
    const [x, y] = corners[n] as Point;
    onCrop(corners[(n + 2) % 4] as Point, [x + far * by[0], y + far * by[1]], `cut by keys ${n}`);
  };
  return (
    <>
      <svg className={styles.lines} aria-hidden="true">
        <path className={styles.shade} fillRule="evenodd" d={`${edges(whole)}${edges(crop)}`} />
        <path className={styles.rim} d={edges(crop)} />
        <path className={styles.line} d={edges(crop)} />
      </svg>
      {corners.map((corner, n) => {
        const [left, top] = view.toView(corner);
        return (
          <button
            key={CORNER_NAMES[n]}
            type="button"
            className={styles.handle}
            style={{ left, top }}
            aria-label={`What stays, ${CORNER_NAMES[n]}: ${corner[0]}, ${corner[1]}. Arrow keys move it`}
            onKeyDown={(event) => nudge(n, event)}
          />
        );
      })}
    </>
  );
}
