import { useEffect, useRef } from "react";
import { growBox } from "../../../../base/index.ts";
import { pageDeskOf, type TracePort, type WordItem } from "../../../../session/index.ts";
import { useSession } from "../../../session-context.tsx";
import styles from "./words.module.css";

/** How much of what is around it is shown, pixels of the picture. */
const AROUND = 12;
/** Larger than this, pixels of the screen, no word is shown. */
const WIDEST = 640;
const TALLEST = 112;
const MOST_TIMES = 3;

interface WordCropProps {
  item: WordItem;
  /** Once its picture is to be seen, or there is none. */
  onShown: () => void;
}

/** The piece of the picture that a word was read from, turned upright. */
export function WordCrop({ item, onShown }: WordCropProps) {
  const page = pageDeskOf(useSession());
  const canvas = useRef<HTMLCanvasElement>(null);
  const { box, turn } = item;
  const shown = useRef(onShown);
  shown.current = onShown;
  useEffect(() => {
    let isStopped = false;
    const draw = async () => {
      const cut = (port: TracePort) => port.crop(growBox(box, AROUND));
      // Another sheet's picture may have been in hand meanwhile.
      const piece = (await page?.peek(cut)) ?? (isStopped ? null : await page?.runQuietly(cut));
      if (!piece) return;
      if (!isStopped && canvas.current) drawUpright(canvas.current, piece, turn);
      piece.close();
    };
    // Without its picture the word is still marked on the sheet.
    draw()
      .catch(() => {})
      .then(() => {
        if (!isStopped) shown.current();
      });
    return () => {
      isStopped = true;
    };
  }, [page, box, turn]);
  return (
    <canvas ref={canvas} className={styles.crop} role="img" aria-label={`Printed: ${item.text}`} />
  );
}

function drawUpright(canvas: HTMLCanvasElement, piece: ImageBitmap, turn: WordItem["turn"]): void {
  const [wide, tall] = turn === 0 ? [piece.width, piece.height] : [piece.height, piece.width];
  const times = Math.min(MOST_TIMES, WIDEST / wide, TALLEST / tall);
  canvas.width = Math.round(wide * times);
  canvas.height = Math.round(tall * times);
  const pen = canvas.getContext("2d");
  if (!pen) return;
  pen.translate(canvas.width / 2, canvas.height / 2);
  pen.scale(times, times);
  pen.rotate((-turn * Math.PI) / 180);
  pen.drawImage(piece, -piece.width / 2, -piece.height / 2);
}
