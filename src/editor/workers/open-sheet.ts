import { type Remote, wrap } from "comlink";
import { renderSheetPdf, type SheetFonts, type SheetModel } from "../../sheet/index.ts";
import { neverUp } from "./never-up.ts";
import type { SheetWorker } from "./sheet-worker.ts";

interface Setter {
  readonly remote: Remote<SheetWorker>;
  /** Never resolves. */
  readonly broken: Promise<never>;
  stop(): void;
}

/** Waits for the next sheet, the PDF writer loaded; null before the first, and after one broken off. */
let setter: Setter | null = null;
/** Whether there is no thread to be had. */
let isAlone = typeof Worker === "undefined";

function open(): Setter {
  const worker = new Worker(new URL("./sheet-worker.ts", import.meta.url), { type: "module" });
  return {
    remote: wrap<SheetWorker>(worker),
    broken: neverUp(worker),
    stop: () => worker.terminate(),
  };
}

/**
 * The sheet as a PDF, set beside the screen, or on it where nothing else can be. Rejects with the
 * signal's reason once nobody waits for it.
 */
export async function sheetPdf(
  model: SheetModel,
  fonts: SheetFonts,
  signal: AbortSignal,
): Promise<Uint8Array> {
  if (isAlone) return renderSheetPdf(model, fonts, signal);
  try {
    setter ??= open();
  } catch {
    isAlone = true;
    return renderSheetPdf(model, fonts, signal);
  }
  const { remote, broken, stop } = setter;
  let isDone = false;
  const left = new Promise<never>((_, reject) => {
    signal.addEventListener("abort", () => {
      if (isDone) return;
      // A layout under way can't be told to stop.
      stop();
      setter = null;
      reject(signal.reason);
    });
  });
  broken.catch(() => {
    isAlone = true;
  });
  try {
    return await Promise.race([remote.pdf(model, fonts), left, broken]);
  } catch (error) {
    if (!isAlone || signal.aborted) throw error;
    return renderSheetPdf(model, fonts, signal);
  } finally {
    isDone = true;
  }
}
