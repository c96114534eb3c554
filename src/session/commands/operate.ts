import { ENGINE_STATES, type Id } from "../../job/index.ts";
import { drawnOf } from "../changes/index.ts";
import {
  doStep,
  isSpring,
  nextReplayStep,
  operablesOf,
  positionOf,
  runReplay,
  showOperate,
  startOperating,
  startOver,
  stopOperating,
} from "../play/index.ts";
import type { Session } from "../session.ts";
import type { Command } from "./command.ts";

export const isOperating = (session: Session): boolean => session.get().operate.on;

/** An editing command that rests while the drawing is a machine being operated. */
export const whileEditing = (command: Command): Command => ({
  ...command,
  canRun: (session) => !isOperating(session) && command.canRun(session),
});

const engine = (to: (typeof ENGINE_STATES)[number]): Command => ({
  id: `engine-${to}`,
  label:
    to === "off" ? "Stop the engine" : to === "running" ? "Engine running" : "Crank the engine",
  canRun: (session) =>
    isOperating(session) && (session.get().operate.live?.when.engine ?? "off") !== to,
  run: (session) => doStep(session, { do: "engine", engine: to }),
});

const wait = (seconds: number, keys: readonly string[]): Command => ({
  id: `wait-${seconds}`,
  label: `Let ${seconds} s pass`,
  keys,
  canRun: isOperating,
  run: (session) => doStep(session, { do: "wait", seconds }),
});

/** Switches that stand where a spring would take them from. */
function heldSwitches(session: Session): readonly Id[] {
  const { job, machine, operate } = session.get();
  const { switches } = operablesOf(job, machine);
  return switches
    .filter((part) => isSpring(part, positionOf(part, operate)))
    .map((part) => part.id);
}

export const OPERATE_COMMANDS: readonly Command[] = [
  {
    id: "operate",
    label: "Operate",
    keys: ["O"],
    detail: (session) => (isOperating(session) ? "stop" : null),
    canRun: (session) =>
      isOperating(session) ||
      (session.get().draft === null && drawnOf(session.get()).diagram.wires.length > 0),
    // One key in and out.
    run: (session) => (isOperating(session) ? stopOperating : startOperating)(session),
  },
  {
    id: "stop-operating",
    label: "Stop operating",
    canRun: isOperating,
    run: stopOperating,
  },
  {
    id: "let-go",
    label: "Let go of what is held",
    keys: ["L"],
    canRun: (session) => isOperating(session) && heldSwitches(session).length > 0,
    run: (session) => {
      for (const id of heldSwitches(session)) doStep(session, { do: "release", switch: id });
    },
  },
  wait(1, ["."]),
  wait(10, [">"]),
  ...ENGINE_STATES.map(engine),
  {
    id: "time-runs",
    label: "Let time run",
    keys: ["T"],
    canRun: isOperating,
    run: (session) => showOperate(session, { timeRuns: !session.get().operate.timeRuns }),
  },
  {
    id: "start-over",
    label: "Start over, everything at rest",
    canRun: (session) => isOperating(session) && session.get().operate.played.length > 0,
    run: startOver,
  },
  {
    id: "replay-next",
    label: "Next recorded step",
    keys: ["N"],
    canRun: (session) => {
      const { on, replay, played } = session.get().operate;
      return on && replay !== null && played.length < replay.steps.length;
    },
    run: nextReplayStep,
  },
  {
    id: "replay-run",
    label: "Run the recording",
    canRun: (session) => isOperating(session) && session.get().operate.replay !== null,
    run: (session) => runReplay(session, !session.get().operate.replay?.runs),
  },
];
