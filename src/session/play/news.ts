import type { PlayEvent } from "../../circuit/index.ts";
import type { Id, Part, PartKindName } from "../../job/index.ts";
import type { PlayedStep } from "./operate-state.ts";
import { eventWords, stepWords } from "./play-words.ts";

/** What is told of the last step, and how much of what happened is not. */
export interface News {
  readonly says: string;
  readonly more: number;
}

/** Never firmer than the drawing: what nobody has said may still happen. */
export const NOTHING_KNOWN = "nothing else, as far as the drawing tells";

const AT_REST = "Everything at rest. Touch a switch on the drawing, or work it here.";

/**
 * What came of the last step, with at most so many events: those that somebody has to know first.
 * A button that was let go at once is told together with its press, where everything happened. `isFailed`: what has
 * no outcome yet is not going to have one.
 */
export function newsOf(
  played: readonly PlayedStep[],
  parts: ReadonlyMap<Id, Part>,
  most: number,
  isFailed: boolean,
): News {
  const last = played.at(-1);
  if (!last) return { says: AT_REST, more: 0 };
  const press = pressBefore(played);
  const shown = press ? [press, last] : [last];
  const events = shown.flatMap(({ outcome }) => outcome?.events ?? []);
  const told = new Set(
    events.toSorted((a, b) => weightOf(a, parts) - weightOf(b, parts)).slice(0, most),
  );
  const says = shown.map(({ step, outcome }) => {
    const did = stepWords(step);
    if (!outcome) return isFailed ? `${did}.` : `${did}: working it out…`;
    if (outcome.refused) return `${did}: not done. ${outcome.refused}`;
    if (outcome.events.length === 0) return press ? `${did}.` : `${did}: ${NOTHING_KNOWN}.`;
    const words = outcome.events
      .filter((one) => told.has(one))
      .map((one) => eventWords(one, parts));
    return words.length === 0 ? `${did}.` : `${did}: ${words.join("; ")}.`;
  });
  return { says: says.join(" "), more: events.length - told.size };
}

/** The press that the last step ended, where it is the step before and something came of it. */
function pressBefore(played: readonly PlayedStep[]): PlayedStep | null {
  const [before, last] = played.slice(-2);
  if (last?.step.do !== "release" || before?.step.do !== "turn") return null;
  const isSame = before.step.switch === last.step.switch;
  return isSame && (before.outcome?.events.length ?? 0) > 0 ? before : null;
}

/** What can hurt somebody when it moves or heats unawares. */
const MOVES: ReadonlySet<PartKindName> = new Set(["motor", "solenoid", "heater"]);

/** What has to be known first comes first. */
function weightOf(event: PlayEvent, parts: ReadonlyMap<Id, Part>): number {
  if (event.what === "blew" || event.what === "oscillates") return 0;
  const kind = "part" in event ? parts.get(event.part)?.kind : undefined;
  if (event.what === "on" || event.what === "off") return kind && MOVES.has(kind) ? 1 : 2;
  return 3;
}
