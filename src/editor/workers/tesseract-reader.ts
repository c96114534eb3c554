import type { createWorker, Worker as TesseractWorker, WorkerOptions } from "tesseract.js";
import type { Print, RawReading, WordReader } from "../../session/index.ts";

/** Page segmentation modes of Tesseract: one line, one word. */
const MODES = { line: "7", word: "8" } as const;
const SIGNS = " -/.,+()=:";
const CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
const LETTERS: Readonly<Record<"capitals" | "all", string>> = {
  capitals: `${CAPITALS}${SIGNS}`,
  all: `${CAPITALS}abcdefghijklmnopqrstuvwxyz${SIGNS}`,
};
/** The engine's number for its network alone, which the bundled data is for. */
const LSTM_ONLY = 1;

interface Lane {
  readonly worker: TesseractWorker;
  /** How it is set up at present. */
  setting: string;
  /** Ends when nothing is under way any more. */
  last: Promise<unknown>;
}

/**
 * A reader of print with so many threads. `options` say where its parts lie: they are never fetched from
 * anywhere else. Rejects with a sentence for the user where it can't be started.
 */
export async function tesseractReader(
  create: typeof createWorker,
  lanes: number,
  options: Partial<WorkerOptions>,
): Promise<WordReader> {
  const open = async (): Promise<Lane> => {
    const worker = await create("eng", LSTM_ONLY, {
      ...options,
      // The app's own folder is the store; a second copy would only fill the device.
      cacheMethod: "none",
      // Failures come back with the call that failed; without this they would be thrown at nobody.
      errorHandler: () => {},
    });
    return { worker, setting: "", last: Promise.resolve() };
  };
  const opened = await Promise.allSettled(Array.from({ length: lanes }, open));
  const ready = opened.flatMap((one) => (one.status === "fulfilled" ? [one.value] : []));
  if (ready.length === 0) throw new Error("The reader of print could not be started.");
  let next = 0;
  return {
    lanes: ready.length,
    read: (print) => {
      const lane = ready[next++ % ready.length] as Lane;
      const answer = lane.last.then(() => readIn(lane, print));
      lane.last = answer.catch(() => {});
      return answer;
    },
    close: () => {
      for (const { worker } of ready) void worker.terminate();
    },
  };
}

async function readIn(lane: Lane, { picture, as, isCapitals }: Print): Promise<RawReading> {
  const letters = LETTERS[isCapitals ? "capitals" : "all"];
  const setting = `${as} ${letters}`;
  if (lane.setting !== setting) {
    await lane.worker.setParameters({
      tessedit_pageseg_mode: MODES[as] as never,
      tessedit_char_whitelist: letters,
    });
    lane.setting = setting;
  }
  const { data } = await lane.worker.recognize(picture as never, {}, { text: false, blocks: true });
  const words = (data.blocks ?? []).flatMap(({ paragraphs }) =>
    paragraphs.flatMap(({ lines }) => lines.flatMap((line) => line.words)),
  );
  return {
    text: words.map(({ text }) => text).join(" "),
    sure: words.length === 0 ? 0 : Math.min(...words.map(({ confidence }) => confidence)),
    letters: words.flatMap(({ symbols }, word) =>
      symbols.map(({ text, bbox }) => ({ text, from: bbox.x0, to: bbox.x1, word })),
    ),
  };
}
