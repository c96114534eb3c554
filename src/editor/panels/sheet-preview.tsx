import { useEffect, useRef, useState } from "react";
import { openPdf } from "../import/pdf-pages.ts";
import styles from "./sheet-dialog.module.css";

interface SheetPreviewProps {
  pdf: Uint8Array;
  label: string;
  /** Told once the pages of this file stand there, or can't be drawn. */
  onDrawn: (pdf: Uint8Array) => void;
}

/** The pages as they will come off the printer: the file itself, drawn again by a PDF reader. */
export function SheetPreview({ pdf, label, onDrawn }: SheetPreviewProps) {
  const frame = useRef<HTMLDivElement>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let stale = false;
    const draw = async () => {
      const pages = await openPdf(pdf);
      try {
        const width = Math.max(320, frame.current?.clientWidth ?? 640) * devicePixelRatio;
        const drawn: HTMLCanvasElement[] = [];
        for (let number = 1; number <= pages.count && !stale; number++) {
          drawn.push(await pages.thumbnail(number, width));
        }
        if (stale) return;
        drawn.forEach((canvas, index) => {
          canvas.setAttribute("role", "img");
          canvas.setAttribute("aria-label", `${label}, page ${index + 1} of ${pages.count}`);
        });
        frame.current?.replaceChildren(...drawn);
        setProblem(null);
      } finally {
        pages.close();
      }
    };
    draw()
      .catch((error: unknown) => {
        if (!stale) setProblem(error instanceof Error ? error.message : String(error));
      })
      .finally(() => {
        if (!stale) onDrawn(pdf);
      });
    return () => {
      stale = true;
    };
  }, [pdf, label, onDrawn]);
  return (
    <>
      {problem !== null && <p role="alert">{problem} The sheet can be saved all the same.</p>}
      <div ref={frame} className={styles.pages} />
    </>
  );
}
