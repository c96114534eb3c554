import { proxy, type Remote, wrap } from "comlink";
import type { Box } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import type { Bow, CleanStep, ProposedCorners, Quad, Squaring } from "../../scan/index.ts";
import { neverUp } from "./never-up.ts";
import type { Progress } from "./run-sliced.ts";
import type { MadePicture, ResultAsk, SquareWorker } from "./square-worker.ts";

export type { MadePicture, ResultAsk } from "./square-worker.ts";

/**
 * One picture squared up and cleaned beside the screen. What was called off rejects with an error
 * named `CalledOff`, all else with a sentence for the user. Bitmaps are the asker's to close.
 */
export interface SquarePort {
  /** Size of the picture, upright. */
  open(picture: Picture): Promise<{ width: number; height: number }>;
  propose(): Promise<ProposedCorners | null>;
  bowNear(corners: Quad): Promise<Bow | null>;
  spot(box: Box): Promise<ImageBitmap>;
  whole(most: number): Promise<ImageBitmap>;
  look(ask: ResultAsk): Promise<ImageBitmap>;
  make(squaring: Squaring, cleaning: readonly CleanStep[], tell: Progress): Promise<MadePicture>;
  /** Breaks off looks and makings under way. */
  callOff(): void;
  /** The thread is let go, with its memory. */
  close(): void;
}

export function openSquare(): SquarePort {
  const worker = new Worker(new URL("./square-worker.ts", import.meta.url), { type: "module" });
  const broken = neverUp(worker);
  const remote: Remote<SquareWorker> = wrap<SquareWorker>(worker);
  const orBroken = <T>(answer: Promise<T>): Promise<T> => Promise.race([answer, broken]);
  return {
    open: (picture) => orBroken(remote.open(picture)),
    propose: () => orBroken(remote.propose()),
    bowNear: (corners) => orBroken(remote.bowNear(corners)),
    spot: (box) => orBroken(remote.spot(box)),
    whole: (most) => orBroken(remote.whole(most)),
    look: (ask) => orBroken(remote.look(ask)),
    make: (squaring, cleaning, tell) => orBroken(remote.make(squaring, cleaning, proxy(tell))),
    callOff: () => void remote.callOff(),
    close: () => worker.terminate(),
  };
}
