import type { Id, Job, Position, Step } from "../../job/index.ts";

const stepsOf = (draft: Job): readonly Step[] =>
  draft.machines.flatMap((machine) =>
    (machine.recordings ?? []).flatMap((recording) => recording.steps),
  );

/** Lets recorded plays go on speaking of a part that has another id. */
export function renameInSteps(draft: Job, old: Id, next: Id): void {
  for (const step of stepsOf(draft)) {
    if ("switch" in step && step.switch === old) step.switch = next;
    if ("id" in step && step.id === old) step.id = next;
  }
}

/** The same for a switch's position. */
export function renamePositionInSteps(draft: Job, id: Id, old: Position, name: Position): void {
  for (const step of stepsOf(draft)) {
    if (step.do === "turn" && step.switch === id && step.position === old) step.position = name;
  }
}
