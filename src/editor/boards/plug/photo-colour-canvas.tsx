import { type KeyboardEvent, type ReactNode, useState } from "react";
import type { Point } from "../../../base/index.ts";
import type { PhotoDot } from "../../../plug/index.ts";
import { ARROW_STEPS } from "../../arrow-steps.ts";
import type { PhotoSpot } from "../../workers/open-colour.ts";
import styles from "./photo-canvas.module.css";
import colours from "./photo-colour.module.css";
import { PhotoZoom, ZOOM_STEP } from "./photo-zoom.tsx";
import { useMeasured } from "./use-measured.ts";
import { usePhotoCamera } from "./use-photo-camera.ts";
import { usePhotoGestures } from "./use-photo-gestures.ts";

interface PhotoColourCanvasProps {
  url: string;
  /** Pixels. */
  width: number;
  height: number;
  /** The cavities where they lie on the photo; none on a photo that is not the plug's. */
  dots: readonly PhotoDot[];
  /** The mark of the cavity whose wire is asked about. */
  mark: string | null;
  spot: PhotoSpot | null;
  /** Where somebody said that it is white. */
  white: PhotoSpot | null;
  onSpot: (spot: PhotoSpot) => void;
  tools: (zoom: ReactNode) => ReactNode;
}

/** Radius of the ring that must lie within the wire, screen pixels. */
const RING = 9;

/** The photo to tap a wire on; the ring is always of one size on the screen, the photo is zoomed under it. */
export function PhotoColourCanvas(props: PhotoColourCanvasProps) {
  const { url, width, height } = props;
  const view = usePhotoCamera(width, height);
  const { camera, place } = view;
  const [aim, setAim] = useState<Point | null>(null);
  const put = (at: Point) => props.onSpot({ at, reach: Math.max(2, RING / camera.scale) });
  const gestures = usePhotoGestures({
    tap: (at) => {
      setAim(null);
      put(view.onPhoto(at));
    },
    // Nothing is dragged here: the photo itself is.
    begin: (from, to) => {
      dragged.from = to;
      view.pan([to[0] - from[0], to[1] - from[1]]);
    },
    drag: (to) => {
      view.pan([to[0] - dragged.from[0], to[1] - dragged.from[1]]);
      dragged.from = to;
    },
    drop: () => {},
    broken: () => {},
    pan: view.pan,
    zoom: view.zoom,
    count: () => {},
  });
  const [dragged] = useState<{ from: Point }>({ from: [0, 0] });

  useMeasured(gestures.ref, view.onSize);

  const key = (event: KeyboardEvent) => {
    const by = ARROW_STEPS[event.key];
    const length = (event.shiftKey ? 2 : 20) / camera.scale;
    const from = aim ?? view.onPhoto(view.middle);
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (by) setAim(view.clamp([from[0] + by[0] * length, from[1] + by[1] * length]));
    else if (event.key === "Enter" || event.key === " ") put(from);
    else if (event.key === "+" || event.key === "=") view.zoom(ZOOM_STEP, view.middle);
    else if (event.key === "-") view.zoom(1 / ZOOM_STEP, view.middle);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const ring = (spot: PhotoSpot) => ({
    ...place(spot.at),
    width: 2 * spot.reach * camera.scale,
    height: 2 * spot.reach * camera.scale,
  });
  return (
    <div className={styles.canvas}>
      {props.tools(<PhotoZoom view={view} />)}
      <div
        ref={gestures.ref}
        {...gestures.handlers}
        className={`${styles.frame} ${colours.frame}`}
        style={{ aspectRatio: `${width} / ${height}` }}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys aim on it, Enter asks about the spot
        tabIndex={0}
        aria-label="Photo of the wires. Aim with the arrow keys, plus and minus zoom, Enter asks about the wire there."
        onKeyDown={key}
      >
        <img src={url} alt="" draggable={false} style={view.lie} />
        {props.dots.map(({ at, mark }) => (
          <span
            key={mark}
            className={`${styles.dot} ${colours.dot}`}
            data-chosen={mark === props.mark}
            style={place(at)}
          >
            {mark}
          </span>
        ))}
        {props.white && (
          <span className={colours.white} style={ring(props.white)}>
            <span>white</span>
          </span>
        )}
        {props.spot && <span className={colours.ring} style={ring(props.spot)} />}
        {aim && <span className={colours.aim} style={place(aim)} />}
      </div>
    </div>
  );
}
