import type { TDocumentDefinitions } from "pdfmake/interfaces";
import { sheetDefinition } from "./definition.ts";
import { DENSITIES } from "./density.ts";
import { POSTSCRIPT_NAMES, type SheetFonts } from "./fonts.ts";
import type { SheetModel } from "./model.ts";
import { SHEET_FONT_FAMILY } from "./svg.ts";

/** What is used of pdfmake, whose Node and browser builds are typed apart. */
interface PdfMaker {
  readonly virtualfs: { writeFileSync(name: string, bytes: Uint8Array): void };
  addFonts(fonts: object): void;
  setUrlAccessPolicy?(allow: () => boolean): void;
  setLocalAccessPolicy?(allow: () => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Uint8Array> };
}

/** Bytes of a PDF. Nothing is read from disk or fetched: the fonts are all it needs. */
export async function renderPdf(
  definition: TDocumentDefinitions,
  fonts: SheetFonts,
): Promise<Uint8Array> {
  const maker = await pdfMaker();
  maker.virtualfs.writeFileSync(POSTSCRIPT_NAMES.regular, fonts.regular);
  maker.virtualfs.writeFileSync(POSTSCRIPT_NAMES.bold, fonts.bold);
  maker.addFonts({
    [SHEET_FONT_FAMILY]: { normal: POSTSCRIPT_NAMES.regular, bold: POSTSCRIPT_NAMES.bold },
  });
  const bytes = await maker.createPdf(definition).getBuffer();
  return new Uint8Array(bytes);
}

let loading: Promise<PdfMaker> | null = null;

/** Loaded at the first sheet: it is larger than the rest of the program together. */
function pdfMaker(): Promise<PdfMaker> {
  loading ??= import("pdfmake").then((module) => {
    const maker = ("default" in module ? module.default : module) as unknown as PdfMaker;
    maker.setUrlAccessPolicy?.(() => false);
    maker.setLocalAccessPolicy?.(() => false);
    return maker;
  });
  return loading;
}

/**
 * The sheet set as large as one page allows. Thirty cavities fit; what does not fit at the
 * smallest legible type runs on to a second page, and both pages say so. Rejects with the signal's
 * reason once nobody waits for it.
 */
export async function renderSheetPdf(
  model: SheetModel,
  fonts: SheetFonts,
  signal?: AbortSignal,
): Promise<Uint8Array> {
  let low = 0;
  let high = DENSITIES.length - 1;
  let best: Uint8Array | null = null;
  let last: Uint8Array | null = null;
  while (low <= high) {
    signal?.throwIfAborted();
    const middle = (low + high) >> 1;
    const { bytes, pages } = await renderAt(model, fonts, middle);
    if (pages <= 1) {
      best = bytes;
      high = middle - 1;
    } else {
      last = bytes;
      low = middle + 1;
    }
  }
  const bytes = best ?? last;
  if (!bytes) throw new Error("a sheet was laid out without a page");
  return bytes;
}

async function renderAt(model: SheetModel, fonts: SheetFonts, index: number) {
  const density = DENSITIES[index];
  if (!density) throw new Error(`no density ${index}`);
  let pages = 0;
  const definition = sheetDefinition(model, density, (count) => {
    pages = count;
  });
  return { bytes: await renderPdf(definition, fonts), pages };
}
