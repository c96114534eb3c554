import { expose } from "comlink";
import { renderSheetPdf, type SheetFonts, type SheetModel } from "../../sheet/index.ts";

/** Sets sheets in a thread of its own: each takes many layouts, one after the other. */
const sheetWorker = {
  pdf: (model: SheetModel, fonts: SheetFonts): Promise<Uint8Array> => renderSheetPdf(model, fonts),
};

export type SheetWorker = typeof sheetWorker;

expose(sheetWorker);
