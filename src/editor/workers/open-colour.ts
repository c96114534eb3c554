import { type Remote, wrap } from "comlink";
import type { Point } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import type { PhotoWhite } from "../../scan/index.ts";
import type { ColourWorker, ReadColours, SpotColours } from "./colour-worker.ts";
import { neverUp } from "./never-up.ts";

export type { SpotColours } from "./colour-worker.ts";

/** A round spot of a photo, in its pixels. */
export interface PhotoSpot {
  readonly at: Point;
  readonly reach: number;
}

/**
 * Colours of wires told from one photo beside the screen. What was called off rejects with an error
 * named `CalledOff`, all else with a sentence for the user.
 */
export interface ColourPort {
  open(picture: Picture): Promise<ReadColours>;
  white(spot: PhotoSpot): Promise<PhotoWhite | null>;
  /** Calls off what was looked at before. */
  look(spot: PhotoSpot, white: PhotoWhite): Promise<SpotColours>;
  callOff(): void;
  /** The thread is let go, with the photo. */
  close(): void;
}

export function openColour(): ColourPort {
  const worker = new Worker(new URL("./colour-worker.ts", import.meta.url), { type: "module" });
  const broken = neverUp(worker);
  const remote: Remote<ColourWorker> = wrap<ColourWorker>(worker);
  const orBroken = <T>(answer: Promise<T>): Promise<T> => Promise.race([answer, broken]);
  return {
    open: (picture) => orBroken(remote.open(picture)),
    white: (spot) => orBroken(remote.white(spot)),
    look: (spot, white) => orBroken(remote.look(spot, white)),
    callOff: () => void remote.callOff(),
    close: () => worker.terminate(),
  };
}
