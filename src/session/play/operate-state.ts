import type { LiveState, PlayEvent } from "../../circuit/index.ts";
import type { Id, Probe, Step } from "../../job/index.ts";

/** What came of a step. */
export interface Outcome {
  /** Time since the play began, once the step was done. */
  readonly seconds: number;
  /** What happened by itself because of it. */
  readonly events: readonly PlayEvent[];
  /** Why it could not be done, one sentence; null when it was. */
  readonly refused: string | null;
}

export interface PlayedStep {
  readonly step: Step;
  /** Null until the circuit has answered. */
  readonly outcome: Outcome | null;
}

/** A recording being gone through again; its steps are done one after the other from rest. */
export interface Replay {
  readonly recording: Id;
  readonly name: string;
  readonly steps: readonly Step[];
  /** Goes on by itself, with the pauses that the recording has. */
  readonly runs: boolean;
}

/** The two leads held to the drawing. */
export interface Leads {
  readonly red: Probe | null;
  readonly black: Probe | null;
  /** The lead that the next tap places. */
  readonly asks: "red" | "black" | null;
  /** V(red) − V(black) now; null while nothing ties the two together; absent until it is known. */
  readonly volts?: number | null;
}

/** The machine being operated on the drawing: never saved, never undone. */
export interface OperateState {
  readonly on: boolean;
  /** What has been done since the play began. The state of the machine follows from it alone. */
  readonly played: readonly PlayedStep[];
  /** The machine as it is after them; null until the first answer. */
  readonly live: LiveState | null;
  /** Why the circuit gives no answer, one sentence. */
  readonly failed: string | null;
  /** Whether time passes by itself while something is timed. */
  readonly timeRuns: boolean;
  readonly replay: Replay | null;
  /** Steps done by hand that gave way to others and can be brought back; none after the next one. */
  readonly setAside: readonly PlayedStep[];
  readonly leads: Leads;
}

export const NOT_OPERATING: OperateState = {
  on: false,
  played: [],
  live: null,
  failed: null,
  timeRuns: true,
  replay: null,
  setAside: [],
  leads: { red: null, black: "chassis", asks: null },
};

/** Waits of a recording that runs pass at the pace of a clock up to here, seconds. */
const LONGEST_PACED = 20;

/** Whether a wait is to be lived through, so that what happens in it can be seen. */
export const isPaced = ({ replay }: OperateState, seconds: number): boolean =>
  replay?.runs === true && seconds <= LONGEST_PACED;
