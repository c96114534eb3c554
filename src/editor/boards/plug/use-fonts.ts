import { useEffect, useState } from "react";

/** The faces of type that the board writes in, as a canvas names them. */
export const BOARD_FONT = "IBM Plex Sans, system-ui, sans-serif";
const WEIGHTS = ["400", "500", "600", "italic 500"];

/**
 * Counts up once the type has loaded. A canvas measures text when it is first drawn and never
 * again, so whatever was laid out before then has to be drawn anew: use it as a key.
 */
export function useFonts(): number {
  const [loaded, setLoaded] = useState(0);
  useEffect(() => {
    let stale = false;
    // Absent where nothing is drawn; a face of type that fails leaves the device's own in place.
    const loads = WEIGHTS.map((weight) => document.fonts?.load(`${weight} 16px "IBM Plex Sans"`));
    Promise.allSettled(loads).then(() => {
      if (!stale) setLoaded((count) => count + 1);
    });
    return () => {
      stale = true;
    };
  }, []);
  return loaded;
}

let pen: CanvasRenderingContext2D | null = null;

/** Pixels that a text takes on the board. `style` as in CSS: weight, and whether it leans. */
export function textWidth(text: string, size: number, style: string): number {
  pen ??= document.createElement("canvas").getContext("2d");
  if (!pen) return text.length * size * 0.65;
  pen.font = `${style} ${size}px ${BOARD_FONT}`;
  return pen.measureText(text).width;
}
