import { ZoomIn, ZoomOut } from "lucide-react";
import { Button } from "../../app/controls/index.ts";
import type { PhotoView } from "./use-photo-camera.ts";

/** How much closer one press goes. */
export const ZOOM_STEP = 1.5;

/** The two buttons that look closer at a photo, and back. */
export function PhotoZoom({ view }: { view: PhotoView }) {
  return (
    <>
      <Button
        icon={<ZoomOut aria-hidden />}
        aria-label="Show the picture smaller"
        disabled={view.isWhole}
        onClick={() => view.zoom(1 / ZOOM_STEP, view.middle)}
      />
      <Button
        icon={<ZoomIn aria-hidden />}
        aria-label="Show the picture larger"
        onClick={() => view.zoom(ZOOM_STEP, view.middle)}
      />
    </>
  );
}
