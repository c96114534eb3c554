import { circuitOf, createPlay } from "../circuit/index.ts";
import type { Id, Job, Step, When } from "../job/index.ts";

/** What a trial sets in motion on a machine that is as drawn, and was at rest before. */
export interface TrialMoves {
  /** Loads and relays that come on. */
  readonly stateMoves: readonly Id[];
  /** Those of which nobody can tell, for something that nobody has said. */
  readonly mayMove: readonly Id[];
}

/**
 * A trial is done, not found: its switches are worked one after the other from rest, so that a
 * module that acts on the press acts. Null where a step of it can't be done.
 */
export function trialMoves(job: Job, machine: Id, when: When): TrialMoves | null {
  const play = createPlay(job, machine);
  const before = play.state().parts;
  for (const step of stepsTo(when)) if (play.step(step).refused !== null) return null;
  const { parts } = play.state();
  const moving = circuitOf(job, machine).parts.filter(({ kind }) => kind !== "module");
  const ids = moving.map(({ id }) => id).filter((id) => !before[id]?.on);
  return {
    stateMoves: ids.filter((id) => parts[id]?.on),
    mayMove: ids.filter((id) => parts[id]?.undecided),
  };
}

/** What is done to a machine at rest to bring it into a state, one thing after the other. */
export const stepsTo = (when: When): readonly Step[] => [
  ...(when.unplugged ?? []).map((id): Step => ({ do: "unplug", id })),
  ...(when.removed ?? []).map((id): Step => ({ do: "remove", id })),
  ...(when.engine === undefined ? [] : [{ do: "engine", engine: when.engine } as const]),
  ...Object.entries<string>(when.switches ?? {}).map(
    ([id, position]): Step => ({ do: "turn", switch: id, position }),
  ),
];
