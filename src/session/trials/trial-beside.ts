import type { Id, Job, Part, Trial } from "../../job/index.ts";
import type { TrialOutcome, TrialState } from "../../readings/index.ts";
import { operablesOf } from "../play/operables.ts";
import type { Seen } from "./trial-draft.ts";

/** What was seen of one part beside what the circuit as drawn does with it. */
export interface Beside {
  readonly part: Id;
  readonly saw: Seen;
  /** Null where the circuit can't be asked: the trial can't be done, or the part is gone. */
  readonly drawn: TrialState | null;
  /** `open`: the circuit can't tell, so that nothing agrees or differs. */
  readonly verdict: "agrees" | "differs" | "open";
}

/** What was seen in a trial, thing by thing, in the order in which it was entered. */
export function besideCircuit(
  job: Job,
  machine: Id,
  { saw }: Pick<Trial, "saw">,
  outcome: TrialOutcome,
): readonly Beside[] {
  const { byId, loads } = operablesOf(job, machine);
  const known = new Set(loads.map(({ id }) => id));
  return saw.map(({ part, state }): Beside => {
    const told = outcome.refused === null && byId.has(part) && known.has(part);
    const drawn = told ? drawnState(outcome, part) : null;
    if (drawn !== "on" && drawn !== "off") return { part, saw: state, drawn, verdict: "open" };
    return { part, saw: state, drawn, verdict: drawn === state ? "agrees" : "differs" };
  });
}

/** How the circuit leaves a load; what comes on only on the way, or may yet come, is not told as off. */
function drawnState(outcome: TrialOutcome, part: Id): TrialState {
  const state = outcome.states[part] ?? "off";
  const moves = outcome.brings.includes(part) || outcome.may.includes(part);
  if (state === "off" && moves) return outcome.may.includes(part) ? "unknown" : "changes";
  return (state === "on" || state === "off") && outcome.timed ? "changes" : state;
}

/** Loads and relays of a machine in the order in which one would look at them after a trial. */
export interface ToLookAt {
  /** Those that the trial as drawn moves, or may move. */
  readonly first: readonly Part[];
  readonly others: readonly Part[];
}

export function toLookAt(job: Job, machine: Id, outcome: TrialOutcome | null): ToLookAt {
  const { loads } = operablesOf(job, machine);
  if (!outcome) return { first: [], others: loads };
  const { brings, later, drops, may, states } = outcome;
  const stay = Object.keys(states).filter((id) => states[id] !== "unknown");
  const order = [...brings, ...later.map(({ id }) => id), ...drops, ...stay, ...may];
  const rank = new Map(order.toReversed().map((id, index) => [id, order.length - index]));
  const first = loads.filter(({ id }) => rank.has(id));
  return {
    first: first.toSorted((a, b) => (rank.get(a.id) ?? 0) - (rank.get(b.id) ?? 0)),
    others: loads.filter(({ id }) => !rank.has(id)),
  };
}
