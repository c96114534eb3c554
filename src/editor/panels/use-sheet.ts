import { useEffect, useMemo, useState } from "react";
import {
  renderSheetPdf,
  type SheetModel,
  type SheetOptions,
  sheetCsv,
  sheetModel,
} from "../../sheet/index.ts";
import { useAnalysis, useSelected } from "../session-context.tsx";
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

/** The page for the machine at hand, null while there is no plug, and the files made of it. */
export function useSheet(options: Omit<SheetOptions, "check">): {
  readonly model: SheetModel | null;
  readonly sheet: SheetState;
} {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const check = useAnalysis();
  const { side, size, date, revision, preparedBy, plug } = options;
  const model = useMemo(() => {
    if (!job.plugs.some((one) => one.id === plug)) return null;
    return sheetModel(job, machine, { side, size, date, revision, preparedBy, plug, check });
  }, [job, machine, check, side, size, date, revision, preparedBy, plug]);
  const [sheet, setSheet] = useState<SheetState>({ state: "setting" });
  useEffect(() => {
    if (!model) return;
    let stale = false;
    let made: SheetFiles | null = null;
    const timer = setTimeout(async () => {
      setSheet({ state: "setting" });
      try {
        const pdf = await renderSheetPdf(model, await sheetFonts());
        if (stale) return;
        made = {
          pdf,
          pdfUrl: addressOf(pdf, "application/pdf"),
          csvUrl: addressOf(sheetCsv(model), "text/csv;charset=utf-8"),
        };
        setSheet({ state: "set", files: made });
      } catch (error) {
        const message = error instanceof Error ? error.message : String(error);
        if (!stale) setSheet({ state: "failed", message });
      }
    }, PAUSE);
    return () => {
      stale = true;
      clearTimeout(timer);
      if (!made) return;
      URL.revokeObjectURL(made.pdfUrl);
      URL.revokeObjectURL(made.csvUrl);
    };
  }, [model]);
  return { model, sheet };
}

const addressOf = (content: Uint8Array | string, type: string) =>
  URL.createObjectURL(new Blob([content as BlobPart], { type }));
