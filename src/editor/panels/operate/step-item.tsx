import type { Id, Part, Step } from "../../../job/index.ts";
import {
  eventWords,
  momentWords,
  NOTHING_KNOWN,
  type Outcome,
  stepWords,
} from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./steps.module.css";

interface StepItemProps {
  step: Step;
  outcome: Outcome | null;
  parts: ReadonlyMap<Id, Part>;
  /** `now`: the machine is as it was after this step. */
  state: "done" | "now" | "to come";
  onGo?: () => void;
  goLabel?: string;
}

/** More than these of one step, as of a lamp that flashes for a minute, are counted and not told. */
const MOST_EVENTS = 12;

/** One step, the time it ended at, and what came of it. */
export function StepItem({ step, outcome, parts, state, onGo, goLabel }: StepItemProps) {
  const events = outcome?.events ?? [];
  const told = events.slice(0, MOST_EVENTS);
  return (
    <li
      className={styles.step}
      data-state={state}
      aria-current={state === "now" ? "step" : undefined}
    >
      <span className={styles.stepHead}>
        <strong>{stepWords(step)}</strong>
        {outcome && <span className={styles.moment}>{momentWords(outcome.seconds)}</span>}
        {onGo && goLabel && (
          <Button tone="quiet" onClick={onGo} aria-label={`${goLabel}: ${stepWords(step)}`}>
            {goLabel}
          </Button>
        )}
      </span>
      {outcome?.refused && (
        <span className={styles.refused}>
          <span className={styles.refusedWord}>Not done.</span> {outcome.refused}
        </span>
      )}
      {told.length > 0 && (
        <ul>
          {told.map((event, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: nothing else tells two equal events apart
            <li key={index} data-loud={event.what === "blew" || event.what === "oscillates"}>
              {eventWords(event, parts)}
            </li>
          ))}
          {events.length > told.length && <li>and {events.length - told.length} more</li>}
        </ul>
      )}
      {outcome && !outcome.refused && events.length === 0 && (
        <span className={styles.nothing}>{NOTHING_KNOWN}</span>
      )}
    </li>
  );
}
