import type { Box } from "../../../base/index.ts";
import type { CleanStep, Squaring } from "../../../scan/index.ts";
import { noPlanWords } from "../../../session/index.ts";
import type { ResultAsk, SquarePort } from "../../workers/open-square.ts";
import { BitmapLayer } from "./bitmap-layer.tsx";
import { CropLayer, useCropGestures } from "./crop-layer.tsx";
import { LevelLayer, useLevelGestures } from "./level-layer.tsx";
import styles from "./picture-stage.module.css";
import { PictureStage, type StageView } from "./picture-stage.tsx";
import { cutSize, type Size, uncutSize } from "./square-work.ts";
import { useBitmap } from "./use-bitmap.ts";

/** What a drag over the result does. */
export type ResultTool = "look" | "level" | "crop";

interface ResultStageProps {
  port: SquarePort;
  zoomSlot: Element | null;
  /** Of the picture as it came. */
  size: Size;
  squaring: Squaring;
  cleaning: readonly CleanStep[];
  tool: ResultTool;
  onSquaring: (change: (squaring: Squaring) => Squaring, intention?: string) => void;
}

/** Pixels that the whole result is shown by; a close look is asked for beyond. */
const COARSE = 1_600_000;
const SETTLED = 200;

/** What the picture becomes, at a screen's size; zoomed, of what is in sight at full resolution. */
export function ResultStage(props: ResultStageProps) {
  const { port, zoomSlot, size, squaring, cleaning, tool, onSquaring } = props;
  // What is cut off is seen only while it is chosen.
  const shown: Squaring = tool === "look" ? squaring : { ...squaring, crop: null };
  const result = tool === "look" ? cutSize(squaring, size) : uncutSize(squaring, size);
  const level = useLevelGestures(onSquaring);
  const crop = useCropGestures(squaring, size, onSquaring);
  const gestures = tool === "level" ? level.gestures : tool === "crop" ? crop.gestures : {};
  const { width, height } = result ?? { width: 1, height: 1 };
  const scale = Math.min(1, Math.sqrt(COARSE / (width * height)));
  const whole: Box = { left: 0, top: 0, right: width - 1, bottom: height - 1 };
  const ask: ResultAsk = { squaring: shown, cleaning, box: whole, scale };
  const look = useBitmap(result ? ask : null, (one) => port.look(one));
  if (!result) {
    return <p role="alert">{noPlanWords(squaring, size)}</p>;
  }
  return (
    <PictureStage size={result} zoomSlot={zoomSlot} label="What the picture becomes" {...gestures}>
      {(view) => (
        <>
          {look.seen && (
            <BitmapLayer
              bitmap={look.seen.bitmap}
              box={{ left: 0, top: 0, right: width, bottom: height }}
              view={view}
            />
          )}
          <CloseLook port={port} ask={ask} view={view} />
          {tool === "level" && <LevelLayer line={level.line} view={view} />}
          {tool === "crop" && (
            <CropLayer
              crop={squaring.crop ?? whole}
              result={result}
              onCrop={crop.set}
              view={view}
            />
          )}
          {look.problem ? (
            <p className={styles.working} role="alert">
              {look.problem}
            </p>
          ) : (
            look.isLate && <p className={styles.working}>Working…</p>
          )}
        </>
      )}
    </PictureStage>
  );
}

function CloseLook({ port, ask, view }: { port: SquarePort; ask: ResultAsk; view: StageView }) {
  const { visible } = view;
  const sharp = Math.min(1, view.scale * (window.devicePixelRatio || 1));
  const isSeen = visible.right > visible.left && visible.bottom > visible.top;
  const box: Box = { ...visible, right: visible.right - 1, bottom: visible.bottom - 1 };
  const { seen } = useBitmap(
    ask.scale < 1 && sharp > 1.15 * ask.scale && isSeen ? { ...ask, box, scale: sharp } : null,
    (one) => port.look(one),
    SETTLED,
  );
  if (!seen) return null;
  // A look at other settings is shown no longer; at another place it still is where it belongs.
  const same = (one: ResultAsk) => JSON.stringify([one.squaring, one.cleaning]);
  if (same(seen.ask) !== same(ask)) return null;
  const { left, top, right, bottom } = seen.ask.box;
  return (
    <BitmapLayer
      bitmap={seen.bitmap}
      box={{ left, top, right: right + 1, bottom: bottom + 1 }}
      view={view}
    />
  );
}
