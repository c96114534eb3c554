import { useEffect, useRef, useState } from "react";
import { boxAt } from "../../../../base/index.ts";
import { type DoubtfulPlace, traceDeskOf } from "../../../../session/index.ts";
import { useSession } from "../../../session-context.tsx";
import styles from "./scan-dock.module.css";
import { useTrace } from "./use-trace.ts";

/** Half of what is shown, in widths of the usual line, and the least of it in pixels. */
const AROUND = { lines: 14, least: 24 };

interface PlacePictureProps {
  place: DoubtfulPlace;
  /** As a sign beside words. */
  isSmall?: boolean;
}

/** The picture around a place, enlarged, with the place in the middle ringed. */
export function PlacePicture({ place, isSmall = false }: PlacePictureProps) {
  const desk = traceDeskOf(useSession());
  const lineWidth = useTrace((state) => state.traced?.lineWidth ?? 3) ?? 3;
  const canvas = useRef<HTMLCanvasElement>(null);
  const [missing, setMissing] = useState(false);
  const [x, y] = place.at;
  useEffect(() => {
    let gone = false;
    const half = Math.round(Math.max(AROUND.least, AROUND.lines * lineWidth));
    const box = boxAt([x, y], half);
    setMissing(false);
    const show = async () => {
      const bitmap = await desk?.crop(box);
      const element = canvas.current;
      const ink = element?.getContext("2d");
      if (!gone && element && ink && bitmap) {
        const zoom = element.width / (2 * half);
        ink.fillStyle = "#ffffff";
        ink.fillRect(0, 0, element.width, element.height);
        ink.imageSmoothingQuality = "high";
        const left = Math.max(0, Math.ceil(-box.left));
        const top = Math.max(0, Math.ceil(-box.top));
        ink.drawImage(bitmap, left * zoom, top * zoom, bitmap.width * zoom, bitmap.height * zoom);
        drawRing(ink, element.width);
      } else if (!gone && !bitmap) setMissing(true);
      bitmap?.close();
    };
    void show();
    return () => {
      gone = true;
    };
  }, [desk, x, y, lineWidth]);
  return (
    <div className={styles.picture} data-small={isSmall}>
      <canvas
        ref={canvas}
        width={320}
        height={320}
        role={isSmall ? undefined : "img"}
        aria-hidden={isSmall}
        aria-label={isSmall ? undefined : "The doubtful place on the picture, enlarged"}
      />
      {missing && !isSmall && <span>No picture of it</span>}
    </div>
  );
}

/** Four strokes towards the middle, clear of what is there. */
function drawRing(ink: CanvasRenderingContext2D, size: number): void {
  const [middle, inner, outer] = [size / 2, size * 0.3, size * 0.4];
  ink.lineCap = "round";
  for (const [colour, width] of [
    ["#ffffff", 8],
    ["#b8007a", 4],
  ] as const) {
    ink.strokeStyle = colour;
    ink.lineWidth = width;
    ink.beginPath();
    for (const [dx, dy] of [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ] as const) {
      ink.moveTo(middle + dx * inner, middle + dy * inner);
      ink.lineTo(middle + dx * outer, middle + dy * outer);
    }
    ink.stroke();
  }
}
