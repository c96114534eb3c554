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
  // Painted once: the bitmap is closed when another one comes.
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || bitmap.width === 0) return;
    element.width = bitmap.width;
    element.height = bitmap.height;
    element.getContext("2d")?.drawImage(bitmap, 0, 0);
  }, [bitmap]);
  const [left, top] = view.toView([box.left - 0.5, box.top - 0.5]);
  return (
    <canvas
      ref={canvas}
      className={styles.layer}
      style={{
        left,
        top,
        width: (box.right - box.left) * view.scale,
        height: (box.bottom - box.top) * view.scale,
        imageRendering: view.scale > 2 ? "pixelated" : "auto",
      }}
    />
  );
}
