import { type KeyboardEvent, type ReactNode, useRef, useState } from "react";
import { distance, type Point } from "../../../base/index.ts";
import {
  endOfFill,
  type FillShape,
  type MarkStyle,
  marksOfDots,
  spacingOf,
} from "../../../plug/index.ts";
import { ARROW_STEPS } from "../../arrow-steps.ts";
import styles from "./photo-canvas.module.css";
import {
  accepted,
  cancelled,
  countedBy,
  dotAt,
  dotsOf,
  filledTo,
  type PhotoTool,
  type PhotoWork,
  redone,
  undone,
  withDot,
  withFill,
  withMovedDot,
  withoutDot,
} from "./photo-work.ts";
import { PhotoZoom } from "./photo-zoom.tsx";
import { useMeasured } from "./use-measured.ts";
import { usePhotoCamera } from "./use-photo-camera.ts";
import { usePhotoGestures } from "./use-photo-gestures.ts";

/** The two ends of the known length, pixels of the photo. */
export type MeasureLine = readonly [Point, Point];

interface PhotoCanvasProps {
  url: string;
  /** Pixels. */
  width: number;
  height: number;
  tool: PhotoTool;
  work: PhotoWork;
  onWork: (change: (work: PhotoWork) => PhotoWork) => void;
  marks: MarkStyle;
  line: MeasureLine | null;
  onLine: (line: MeasureLine) => void;
  /** What stands over the photo, the buttons that zoom it among it. */
  tools: (zoom: ReactNode) => ReactNode;
}

/** Screen pixels within which a press takes hold of a dot that is there already. */
const GRAB = 18;
/** Sizes of a dot, screen pixels: no larger than leaves its neighbours apart. */
const LARGEST_DOT = 32;
const SMALLEST_DOT = 12;

/** What a drag has hold of. */
type Held =
  | { readonly what: "dot"; readonly index: number; readonly before: PhotoWork }
  | { readonly what: "fill"; readonly before: PhotoWork }
  | { readonly what: "line"; readonly from: Point }
  | { readonly what: "nothing" };

/**
 * The photo with a dot on every cavity. A drag fills a row, a grid or a ring; a tap puts one down;
 * a dot can be dragged into place.
 */
export function PhotoCanvas(props: PhotoCanvasProps) {
  const { url, width, height, tool, work, onWork } = props;
  const view = usePhotoCamera(width, height);
  const { camera, onPhoto } = view;
  const [aim, setAim] = useState<Point | null>(null);
  /** Where a fill by keyboard began. */
  const [anchor, setAnchor] = useState<Point | null>(null);
  const held = useRef<Held>({ what: "nothing" });
  const dots = dotsOf(work);
  const spacing = spacingOf(dots) * camera.scale;
  const dotSize = Math.max(SMALLEST_DOT, Math.min(LARGEST_DOT, spacing * 0.8));
  // Between two dots there must be room to begin something new.
  const reach = Math.min(GRAB, Math.max(8, spacing * 0.45)) / camera.scale;
  const shape: FillShape | null = tool === "remove" || tool === "measure" ? null : tool;

  const begin = (from: Point, to: Point) => {
    const start = onPhoto(from);
    if (tool === "measure") {
      held.current = { what: "line", from: start };
      props.onLine([start, onPhoto(to)]);
      return;
    }
    if (work.pending && distance(endOfFill(work.pending), start) <= reach) {
      held.current = { what: "fill", before: work };
      onWork((now) => filledTo(now, onPhoto(to)));
      return;
    }
    const index = dotAt(dots, start, reach);
    if (index !== null) {
      // Many small moves of one drag are one step: each starts from what was there before it.
      const before = accepted(work);
      held.current = { what: "dot", index, before };
      onWork(() => withMovedDot(before, index, onPhoto(to)));
    } else if (shape) {
      held.current = { what: "fill", before: work };
      onWork((now) => withFill(now, shape, start, onPhoto(to)));
    }
  };
  const drag = (to: Point) => {
    const at = onPhoto(to);
    const what = held.current;
    if (what.what === "dot") onWork(() => withMovedDot(what.before, what.index, at));
    else if (what.what === "fill") onWork((now) => filledTo(now, at));
    else if (what.what === "line") props.onLine([what.from, at]);
  };
  const gestures = usePhotoGestures({
    tap: (at) => {
      const spot = onPhoto(at);
      const index = dotAt(dots, spot, reach);
      if (tool === "remove") {
        if (index !== null) onWork((now) => withoutDot(now, index));
      } else if (tool !== "measure" && index === null) onWork((now) => withDot(now, spot));
    },
    begin,
    drag,
    drop: (to) => {
      drag(to);
      held.current = { what: "nothing" };
    },
    broken: () => {
      const what = held.current;
      if (what.what === "dot" || what.what === "fill") onWork(() => what.before);
      held.current = { what: "nothing" };
    },
    pan: view.pan,
    zoom: view.zoom,
    count: (by) => onWork((now) => countedBy(now, by)),
  });

  useMeasured(gestures.ref, view.onSize);

  /** One end of a row, grid, ring or length set by keyboard. */
  const setEnd = (at: Point) => {
    if (anchor === null) {
      setAnchor(at);
      return;
    }
    setAnchor(null);
    if (distance(anchor, at) === 0) return;
    if (tool === "measure") props.onLine([anchor, at]);
    else if (shape) onWork((now) => withFill(now, shape, anchor, at));
  };
  const confirm = (at: Point, filling: boolean) => {
    if (filling || tool === "measure" || anchor) setEnd(at);
    else if (work.pending) onWork(accepted);
    else if (tool === "remove") {
      const index = dotAt(dots, at, reach);
      if (index !== null) onWork((now) => withoutDot(now, index));
    } else onWork((now) => withDot(now, at));
  };
  const key = (event: KeyboardEvent) => {
    const by = ARROW_STEPS[event.key];
    const length = (event.shiftKey ? 2 : 20) / camera.scale;
    const from: Point = aim ?? onPhoto(view.middle);
    const chord = event.ctrlKey || event.metaKey;
    if (chord && event.key.toLowerCase() === "z") onWork(event.shiftKey ? redone : undone);
    else if (chord || event.altKey) return;
    else if (by) setAim(view.clamp([from[0] + by[0] * length, from[1] + by[1] * length]));
    else if (event.key === "Enter" || event.key === " ") confirm(from, event.shiftKey);
    else if (event.key === "+" || event.key === "=") onWork((now) => countedBy(now, 1));
    else if (event.key === "-") onWork((now) => countedBy(now, -1));
    else if (event.key === "Escape" && (work.pending || anchor)) {
      setAnchor(null);
      onWork(cancelled);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const marks = marksOfDots(dots, props.marks);
  const at = view.place;
  return (
    <div className={styles.canvas}>
      {props.tools(<PhotoZoom view={view} />)}
      <div
        ref={gestures.ref}
        {...gestures.handlers}
        className={styles.frame}
        style={{ aspectRatio: `${width} / ${height}` }}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys aim on it, Enter puts a cavity down
        tabIndex={0}
        data-own-escape={work.pending || anchor ? "" : undefined}
        aria-label="Photo of the plug. Aim with the arrow keys, Enter puts a cavity down; Shift and Enter at the first and the last cavity fills between, plus and minus change how many."
        onKeyDown={key}
      >
        <img src={url} alt="" draggable={false} style={view.lie} />
        {props.line && <Line line={props.line} at={at} />}
        {dots.map((dot, index) => (
          <span
            // biome-ignore lint/suspicious/noArrayIndexKey: a dot is its place in the order of marks
            key={index}
            className={styles.dot}
            data-pending={index >= work.dots.length}
            style={{
              ...at(dot.at),
              minWidth: dotSize,
              height: dotSize,
              fontSize: Math.max(9, dotSize * 0.5),
            }}
          >
            {marks[index]}
          </span>
        ))}
        {anchor && <span className={styles.anchor} style={at(anchor)} />}
        {aim && <span className={styles.aim} style={at(aim)} />}
      </div>
    </div>
  );
}

/** The known length, drawn from end to end. */
function Line({
  line: [a, b],
  at,
}: {
  line: MeasureLine;
  at: (point: Point) => { left: number; top: number };
}) {
  const [from, to] = [at(a), at(b)];
  return (
    <svg className={styles.line} aria-hidden="true">
      <line className={styles.rim} x1={from.left} y1={from.top} x2={to.left} y2={to.top} />
      <line x1={from.left} y1={from.top} x2={to.left} y2={to.top} />
      <circle cx={from.left} cy={from.top} r={5} />
      <circle cx={to.left} cy={to.top} r={5} />
    </svg>
  );
}
