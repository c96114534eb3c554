import { ZoomIn, ZoomOut } from "lucide-react";
import { type ReactNode, useRef, useState } from "react";
import { createPortal } from "react-dom";
import type { Box, Point } from "../../../base/index.ts";
import { Button } from "../../app/controls/index.ts";
import { type Camera, panBy, toBoard, toFace } from "../../boards/plug/camera.ts";
import { wholeCamera, zoomed } from "../../boards/plug/photo-camera.ts";
import { useMeasured } from "../../boards/plug/use-measured.ts";
import { usePhotoGestures } from "../../boards/plug/use-photo-gestures.ts";
import styles from "./picture-stage.module.css";
import type { Size } from "./square-work.ts";

/** How a picture lies in its frame. The middle of its first pixel is [0, 0]. */
export interface StageView {
  /** Pixels of the screen for each of the picture's. */
  readonly scale: number;
  readonly frame: Size;
  readonly toView: (at: Point) => Point;
  /** What of the picture is in sight, edges whole pixels. */
  readonly visible: Box;
}

interface PictureStageProps {
  /** Of the picture shown, pixels. */
  size: Size;
  label: string;
  /** Where the buttons that zoom it stand: over the picture they would lie on what is dragged. */
  zoomSlot: Element | null;
  onTap?: (at: Point, view: StageView) => void;
  /** Whether the drag takes hold of something there; else it moves the picture. */
  onBegin?: (from: Point, to: Point, view: StageView) => boolean;
  onDrag?: (to: Point) => void;
  onDrop?: (to: Point) => void;
  onBroken?: () => void;
  children: (view: StageView) => ReactNode;
}

const ZOOM_STEP = 1.6;
/** Screen pixels of a picture's pixel beyond which there is nothing more to see. */
const LARGEST = 8;
/** Screen pixels around the picture, so that its corners can be taken hold of. */
const ROOM = 26;

/** A picture in a frame that it can be zoomed and moved in, and what lies over it. */
export function PictureStage(props: PictureStageProps) {
  const { size, label, zoomSlot, children } = props;
  const [frame, setFrame] = useState<Size>({ width: 0, height: 0 });
  const [moved, setCamera] = useState<{ camera: Camera; of: string } | null>(null);
  const panning = useRef<Point | null>(null);
  const whole = wholeCamera({ right: size.width, bottom: size.height }, frame, ROOM);
  const most = Math.max(LARGEST, whole.scale * 2);
  // A picture of another size is seen whole at first.
  const of = `${size.width} ${size.height}`;
  const camera = moved?.of === of ? moved.camera : whole;
  const look = (change: (camera: Camera) => Camera) =>
    setCamera((before) => ({ of, camera: change(before?.of === of ? before.camera : whole) }));

  const onPicture = (at: Point): Point => {
    const [x, y] = toFace(camera, at);
    return [x - 0.5, y - 0.5];
  };
  const [left, top] = toFace(camera, [0, 0]);
  const [right, bottom] = toFace(camera, [frame.width, frame.height]);
  const view: StageView = {
    scale: camera.scale,
    frame,
    toView: ([x, y]) => toBoard(camera, [x + 0.5, y + 0.5]),
    visible: {
      left: Math.max(0, Math.floor(left)),
      top: Math.max(0, Math.floor(top)),
      right: Math.min(size.width, Math.ceil(right)),
      bottom: Math.min(size.height, Math.ceil(bottom)),
    },
  };

  const gestures = usePhotoGestures({
    tap: (at) => props.onTap?.(onPicture(at), view),
    begin: (from, to) => {
      if (props.onBegin?.(onPicture(from), onPicture(to), view)) return;
      panning.current = to;
      look((now) => panBy(now, [to[0] - from[0], to[1] - from[1]]));
    },
    drag: (to) => {
      const from = panning.current;
      if (!from) return props.onDrag?.(onPicture(to));
      panning.current = to;
      look((now) => panBy(now, [to[0] - from[0], to[1] - from[1]]));
    },
    drop: (to) => {
      if (!panning.current) props.onDrop?.(onPicture(to));
      panning.current = null;
    },
    broken: () => {
      if (!panning.current) props.onBroken?.();
      panning.current = null;
    },
    pan: (by) => look((now) => panBy(now, by)),
    zoom: (factor, at) => look((now) => zoomed(now, factor, at, whole, most)),
    count: () => {},
  });

  useMeasured(gestures.ref, setFrame);

  const middle: Point = [frame.width / 2, frame.height / 2];
  return (
    <div className={styles.stage}>
      {/* biome-ignore lint/a11y/useSemanticElements: a picture with handles is no set of fields */}
      <div
        ref={gestures.ref}
        {...gestures.handlers}
        className={styles.frame}
        role="group"
        aria-label={label}
      >
        {frame.width > 0 && children(view)}
      </div>
      {zoomSlot &&
        createPortal(
          <>
            <Button
              tone="quiet"
              icon={<ZoomOut aria-hidden />}
              aria-label="Show the picture smaller"
              disabled={camera.scale <= whole.scale}
              onClick={() => look((now) => zoomed(now, 1 / ZOOM_STEP, middle, whole, most))}
            />
            <Button
              tone="quiet"
              icon={<ZoomIn aria-hidden />}
              aria-label="Show the picture larger"
              disabled={camera.scale >= most}
              onClick={() => look((now) => zoomed(now, ZOOM_STEP, middle, whole, most))}
            />
          </>,
          zoomSlot,
        )}
    </div>
  );
}
