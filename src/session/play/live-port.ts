import type { LiveState, Play } from "../../circuit/index.ts";
import type { Id, Job, Probe, Step } from "../../job/index.ts";

/** A play that may be worked out elsewhere, as in a worker. One call at a time, in order. */
export interface LivePort {
  state(): Promise<LiveState>;
  step(step: Step): Promise<LiveState>;
  volts(red: Probe, black: Probe): Promise<number | null>;
  /** Gives up whatever is under way; no answer comes after it. */
  stop(): void;
}

/** Opens a play at rest. Large jobs are handed to a worker by whoever knows workers. */
export type OpenPlay = (job: Job, machine: Id | null) => LivePort;

/** A play on the spot behind the same port; it is not begun before the first question. */
export function portOf(open: () => Play): LivePort {
  let play: Play | null = null;
  const opened = () => {
    play ??= open();
    return play;
  };
  return {
    state: async () => opened().state(),
    step: async (step) => opened().step(step),
    volts: async (red, black) => opened().volts(red, black),
    stop: () => {},
  };
}
