import { expose } from "comlink";
import { createPlay, type LiveState, type Play } from "../../circuit/index.ts";
import type { Id, Job, Probe, Step } from "../../job/index.ts";

let play: Play | null = null;

const opened = (): Play => {
  if (!play) throw new Error("asked before it was begun");
  return play;
};

/** One play in a thread of its own. */
const playWorker = {
  begin(job: Job, machine: Id | null): void {
    play = createPlay(job, machine);
  },
  state: (): LiveState => opened().state(),
  step: (step: Step): LiveState => opened().step(step),
  volts: (red: Probe, black: Probe): number | null => opened().volts(red, black),
};

export type PlayWorker = typeof playWorker;

expose(playWorker);
