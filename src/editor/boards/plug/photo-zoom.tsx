import { ZoomIn, ZoomOut } from "lucide-react";
import { Button } from "../../app/controls/index.ts";

/** How much closer one press goes. */
export const ZOOM_STEP = 1.5;

interface PhotoZoomProps {
  /** All of the photo is in sight: it gets no smaller. */
  isWhole: boolean;
  /** Told how many times larger. */
  onZoom: (by: number) => void;
}

/** The two buttons that look closer at a photo, and back. */
export function PhotoZoom({ isWhole, onZoom }: PhotoZoomProps) {
  return (
    <>
      <Button
        icon={<ZoomOut aria-hidden />}
        aria-label="Show the picture smaller"
        disabled={isWhole}
        onClick={() => onZoom(1 / ZOOM_STEP)}
      />
      <Button
        icon={<ZoomIn aria-hidden />}
        aria-label="Show the picture larger"
        onClick={() => onZoom(ZOOM_STEP)}
      />
    </>
  );
}
