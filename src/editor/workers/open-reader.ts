import type { WordReader } from "../../session/index.ts";
import { tesseractReader } from "./tesseract-reader.ts";

/** Where the app's own folder holds the reader's parts; see SERVED in vite.config.ts. */
const FOLDER = new URL("ocr/", document.baseURI).href;
/** Devices with so many cores have one to spare for a second thread. */
const MANY_CORES = 4;

/** Opens the reader of print, offline: some 9 MB of memory a thread, from the app's own folder. */
export async function openReader(): Promise<WordReader> {
  const { createWorker } = (await import("tesseract.js")).default;
  const lanes = navigator.hardwareConcurrency >= MANY_CORES ? 2 : 1;
  return tesseractReader(createWorker, lanes, {
    workerPath: `${FOLDER}worker.min.js`,
    workerBlobURL: false,
    corePath: `${FOLDER}core`,
    langPath: `${FOLDER}data`,
    gzip: true,
  });
}
