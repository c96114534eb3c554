import { expose } from "comlink";
import { createPlay, type LiveState, type Play } from "../../circuit/index.ts";
import type { Id, Probe, Step } from "../../job/index.ts";
import { createTaker } from "./hand-over.ts";

const { taken, ...taker } = createTaker();

let play: Play | null = null;

const opened = (): Play => {
  if (!play) throw new Error("asked before it was begun");
  return play;
};

/** One play in a thread of its own. */
const playWorker = {
  ...taker,
  /** With the job that was taken piece by piece. */
  begin(machine: Id | null): void {
    play = createPlay(taken(), machine);
  },
  state: (): LiveState => opened().state(),
  step: (step: Step): LiveState => opened().step(step),
  volts: (red: Probe, black: Probe): number | null => opened().volts(red, black),
};

export type PlayWorker = typeof playWorker;

expose(playWorker);
