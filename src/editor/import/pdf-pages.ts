import type { PDFDocumentProxy } from "pdfjs-dist";

/** A PDF opened for choosing a page of it. */
export interface PdfPages {
  readonly count: number;
  /** Draws a page no wider than `width` pixels; pages count from 1. */
  thumbnail(page: number, width: number): Promise<HTMLCanvasElement>;
  /** A page as a PNG at 300 dots per inch, or as near to it as `MOST_PIXELS` lets it. */
  render(page: number): Promise<Blob>;
  close(): void;
}

const DOTS_PER_INCH = 300;
/** A PDF's own unit. */
const POINTS_PER_INCH = 72;
/** An A1 drawing at 300 dpi has 70 megapixels; a browser tab on a tablet does not hold them twice. */
const MOST_PIXELS = 36e6;

/** Rejects with a sentence for the user when the bytes are no PDF that can be read. */
export async function openPdf(bytes: Uint8Array): Promise<PdfPages> {
  const pdfjs = await import("pdfjs-dist");
  const worker = await import("pdfjs-dist/build/pdf.worker.min.mjs?url");
  pdfjs.GlobalWorkerOptions.workerSrc = worker.default;
  const served = (folder: string) => new URL(`pdfjs/${folder}/`, document.baseURI).href;
  const task = pdfjs.getDocument({
    data: bytes.slice(),
    cMapUrl: served("cmaps"),
    standardFontDataUrl: served("standard_fonts"),
    wasmUrl: served("wasm"),
    iccUrl: served("iccs"),
    isEvalSupported: false,
  });
  let document_: PDFDocumentProxy;
  try {
    document_ = await task.promise;
  } catch (error) {
    const locked = error instanceof Error && error.name === "PasswordException";
    throw new Error(
      locked
        ? "This PDF is locked by a password. Save it without one and import it again."
        : "This PDF can't be read: it is cut short or damaged.",
    );
  }
  const draw = async (number: number, scaleFor: (width: number, height: number) => number) => {
    const page = await document_.getPage(number);
    const natural = page.getViewport({ scale: 1 });
    const viewport = page.getViewport({ scale: scaleFor(natural.width, natural.height) });
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.floor(viewport.width));
    canvas.height = Math.max(1, Math.floor(viewport.height));
    await page.render({ canvas, viewport, background: "#ffffff" }).promise;
    page.cleanup();
    return canvas;
  };
  return {
    count: document_.numPages,
    thumbnail: (page, width) => draw(page, (natural) => width / natural),
    render: async (page) => {
      const canvas = await draw(page, (width, height) =>
        Math.min(DOTS_PER_INCH / POINTS_PER_INCH, Math.sqrt(MOST_PIXELS / (width * height))),
      );
      const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
      canvas.width = 0;
      if (!blob) throw new Error("The page is too large for this device to draw.");
      return blob;
    },
    close: () => void document_.loadingTask.destroy(),
  };
}
