import type { Id, Job, Probe, Step } from "../../job/index.ts";
import type { LiveState } from "./live-state.ts";

/** A machine being operated on the drawing: one step at a time, each answered by the new state. */
export interface Play {
  /** A step that can't be done leaves all as it was and says why in `refused`. */
  step(step: Step): LiveState;
  state(): LiveState;
  /** Back to everything at rest, every fuse good. */
  reset(): LiveState;
  /** V(red) − V(black) at this moment; null while nothing ties the two together. */
  volts(red: Probe, black: Probe): number | null;
}

/** At rest, engine off, all plugged in and good. */
export declare function createPlay(job: Job, machine: Id | null): Play;
