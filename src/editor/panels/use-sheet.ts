import { useEffect, useRef, useState } from "react";
import { type SheetModel, type SheetOptions, sheetCsv } from "../../sheet/index.ts";
import { useAnswer, useSelected } from "../session-context.tsx";
import { sheetPdf } from "../workers/open-sheet.ts";
import { sheetFonts } from "./sheet-fonts.ts";

export interface SheetFiles {
  readonly pdf: Uint8Array;
  /** Addresses for saving; they live as long as the dialog shows this sheet. */
  readonly pdfUrl: string;
  readonly csvUrl: string;
}

export type SheetState =
  | { readonly state: "setting" }
  | { readonly state: "set"; readonly files: SheetFiles }
  | { readonly state: "failed"; readonly message: string };

/** Milliseconds without a keystroke before the page is set anew. */
const PAUSE = 250;
/** Long enough for the dialog to be painted before the layout keeps the browser busy. */
const FIRST_PAUSE = 40;

/** The page for the machine at hand, null while it is worked out, and the files made of it. */
export function useSheet(options: Omit<SheetOptions, "check">): {
  readonly model: SheetModel | null;
  readonly hasPlug: boolean;
  readonly sheet: SheetState;
  /** The page set last, which stands there while the next one is being set; null before the first. */
  readonly shown: Uint8Array | null;
} {
  const hasPlug = useSelected(({ job }) => job.plugs.some(({ id }) => id === options.plug));
  const newest = useAnswer(hasPlug ? { about: "sheet", options } : null);
  const current = newest !== null;
  // Nothing is printed of verdicts that may no longer be so: the page of before waits for the new one.
  const lastModel = useRef<SheetModel | null>(null);
  const model = hasPlug ? (newest ?? lastModel.current) : null;
  lastModel.current = model;
  const [sheet, setSheet] = useState<SheetState>({ state: "setting" });
  const [shown, setShown] = useState<Uint8Array | null>(null);
  const isFirst = useRef(true);
  useEffect(() => {
    if (!current) setSheet({ state: "setting" });
    if (!model || !current) return;
    const stop = new AbortController();
    let made: SheetFiles | null = null;
    setSheet({ state: "setting" });
    const timer = setTimeout(
      async () => {
        isFirst.current = false;
        try {
          const pdf = await sheetPdf(model, await sheetFonts(), stop.signal);
          if (stop.signal.aborted) return;
          setShown(pdf);
          made = {
            pdf,
            pdfUrl: addressOf(pdf, "application/pdf"),
            csvUrl: addressOf(sheetCsv(model), "text/csv;charset=utf-8"),
          };
          setSheet({ state: "set", files: made });
        } catch (error) {
          const message = error instanceof Error ? error.message : String(error);
          if (!stop.signal.aborted) setSheet({ state: "failed", message });
        }
      },
      isFirst.current ? FIRST_PAUSE : PAUSE,
    );
    return () => {
      stop.abort();
      clearTimeout(timer);
      if (!made) return;
      URL.revokeObjectURL(made.pdfUrl);
      URL.revokeObjectURL(made.csvUrl);
    };
  }, [model, current]);
  return { model, hasPlug, sheet, shown };
}

const addressOf = (content: Uint8Array | string, type: string) =>
  URL.createObjectURL(new Blob([content as BlobPart], { type }));
