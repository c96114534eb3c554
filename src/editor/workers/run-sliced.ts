import type { Sliced } from "../../scan/index.ts";

/** Milliseconds of work between two looks at what has come in: a worker hears a cancel within them. */
const TURN = 30;

/** What a caller is told of long work, 0 to 1; sent through `proxy` of comlink where it crosses threads. */
export type Progress = (share: number) => void;

/** Work that was called off. Whoever called it off need not show it. */
export class CalledOff extends Error {
  override name = "CalledOff";
}

const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

/** Lets every message that has come in be heard; a timer would be held back to 4 ms. */
export const breathe = () =>
  new Promise<void>((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });

/**
 * Does sliced work in a worker, listening in between. Rejects with `CalledOff` once `isOff` says so.
 */
export async function runSliced<T>(
  work: Sliced<T>,
  progress: Progress,
  isOff: () => boolean,
): Promise<T> {
  let told = performance.now();
  for (;;) {
    const slice = work.next();
    if (slice.done) return slice.value;
    if (performance.now() - told < TURN) continue;
    progress(slice.value);
    await breathe();
    if (isOff()) {
      work.return(undefined as never);
      throw new CalledOff("called off");
    }
    told = performance.now();
  }
}
