import { useLayoutEffect, useRef } from "react";
import type { Box } from "../../../base/index.ts";
import styles from "./picture-stage.module.css";
import type { StageView } from "./picture-stage.tsx";

interface BitmapLayerProps {
  bitmap: ImageBitmap;
  /** What it shows, in pixels of the picture on the stage: edges, so that the whole is 0 to its width. */
  box: Box;
  view: StageView;
}

/** A piece of the picture where it belongs. */
export function BitmapLayer({ bitmap, box, view }: BitmapLayerProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const width = (box.right - box.left) * view.scale;
  const height = (box.bottom - box.top) * view.scale;
  const shrink = shrinkFor((width * (window.devicePixelRatio || 1)) / Math.max(1, bitmap.width));
  useLayoutEffect(() => {
    const element = canvas.current;
    // A bitmap that another one is about to take the place of may be closed by now.
    if (!element || bitmap.width === 0) return;
    element.width = Math.max(1, Math.round(bitmap.width * shrink));
    element.height = Math.max(1, Math.round(bitmap.height * shrink));
    const ink = element.getContext("2d");
    if (!ink) return;
    ink.imageSmoothingQuality = "high";
    ink.drawImage(bitmap, 0, 0, element.width, element.height);
  }, [bitmap, shrink]);
  const [left, top] = view.toView([box.left - 0.5, box.top - 0.5]);
  return (
    <canvas
      ref={canvas}
      className={styles.layer}
      style={{ left, top, width, height, imageRendering: view.scale > 2 ? "pixelated" : "auto" }}
    />
  );
}

/** In steps: thin lines break where a browser shrinks a canvas, and each step is drawn anew. */
const shrinkFor = (scale: number): number =>
  scale >= 1 ? 1 : 2 ** (Math.ceil(4 * Math.log2(Math.max(scale, 1 / 64))) / 4);
