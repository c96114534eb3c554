import { useLayoutEffect, useRef } from "react";
import type { Box, Point } from "../../../base/index.ts";
import { useTheme } from "../../theme/theme.tsx";
import type { SquarePort } from "../../workers/open-square.ts";
import styles from "./loupe.module.css";
import type { StageView } from "./picture-stage.tsx";
import type { Size } from "./square-work.ts";
import { useBitmap } from "./use-bitmap.ts";

interface LoupeProps {
  port: SquarePort;
  /** Of the picture as it came. */
  size: Size;
  /** The spot under the finger, pixels of the picture. */
  at: Point;
  /** The sides that meet there run to these. */
  towards: readonly Point[];
  view: StageView;
}

/** Pixels of the screen across the glass. */
const GLASS = 168;
/** It shows at least so many times what the stage does. */
const STRONGER = 3;

/** What lies under a finger, enlarged, on the other side of the picture where the finger hides nothing. */
export function Loupe({ port, size, at, towards, view }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { palette } = useTheme();
  const scale = Math.min(12, Math.max(1, STRONGER * view.scale));
  const reach = GLASS / scale;
  // Twice as much as is seen, in steps: a drag does not ask for each pixel.
  const step = Math.max(1, Math.round(reach / 2));
  const middle = at.map((one) => Math.round(one / step) * step) as unknown as Point;
  const box = within(middle, Math.ceil(reach), size);
  const { seen } = useBitmap<Box>(box, (ask) => port.spot(ask));

  useLayoutEffect(() => {
    const ink = canvas.current?.getContext("2d");
    if (!ink) return;
    const sharp = Math.min(3, window.devicePixelRatio || 1);
    ink.canvas.width = ink.canvas.height = Math.round(GLASS * sharp);
    ink.setTransform(sharp, 0, 0, sharp, 0, 0);
    ink.fillStyle = "#808080";
    ink.fillRect(0, 0, GLASS, GLASS);
    const place = ([x, y]: Point): Point => [
      (x - at[0]) * scale + GLASS / 2,
      (y - at[1]) * scale + GLASS / 2,
    ];
    if (seen && seen.bitmap.width > 0) {
      const [x, y] = place([seen.ask.left - 0.5, seen.ask.top - 0.5]);
      ink.imageSmoothingEnabled = scale < 3;
      const { left, top, right, bottom } = seen.ask;
      ink.drawImage(seen.bitmap, x, y, (right - left) * scale, (bottom - top) * scale);
    }
    ink.lineWidth = 2;
    ink.strokeStyle = palette.accent;
    for (const other of towards) {
      ink.beginPath();
      ink.moveTo(GLASS / 2, GLASS / 2);
      ink.lineTo(...place(other));
      ink.stroke();
    }
    // A ring with nothing in its middle: the very spot stays in sight.
    for (const [colour, width] of [
      [palette.paperRaised, 4],
      [palette.ink, 1.5],
    ] as const) {
      ink.strokeStyle = colour;
      ink.lineWidth = width;
      ink.beginPath();
      ink.arc(GLASS / 2, GLASS / 2, 9, 0, 2 * Math.PI);
      ink.stroke();
    }
  });

  const isLeft = view.toView(at)[0] < view.frame.width / 2;
  return (
    <canvas
      ref={canvas}
      className={styles.glass}
      data-side={isLeft ? "right" : "left"}
      style={{ width: GLASS, height: GLASS }}
    />
  );
}

function within([x, y]: Point, reach: number, { width, height }: Size): Box {
  return {
    left: Math.max(0, Math.min(width - 1, x - reach)),
    top: Math.max(0, Math.min(height - 1, y - reach)),
    right: Math.max(1, Math.min(width, x + reach)),
    bottom: Math.max(1, Math.min(height, y + reach)),
  };
}
