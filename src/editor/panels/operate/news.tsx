import type { LiveState } from "../../../circuit/index.ts";
import {
  chatterWords,
  eventWords,
  isWaiting,
  operablesOf,
  stepWords,
} from "../../../session/index.ts";
import { useSelected } from "../../session-context.tsx";
import { StatusShape } from "../status-shape.tsx";
import styles from "./operate-panel.module.css";
import { NOTHING_KNOWN } from "./step-item.tsx";

const NO_DOUBTS: LiveState["doubts"] = [];

/** What stands in the way of a firm answer; nothing where nothing does. */
export function Hindrances() {
  const operate = useSelected((state) => state.operate);
  const { live, failed } = operate;
  const doubts = live?.doubts ?? NO_DOUBTS;
  return (
    <div className={styles.news}>
      {failed && (
        <p role="alert" className={styles.bad}>
          <StatusShape status="contradiction" /> {failed} Start over, or mend the drawing.
        </p>
      )}
      {live && live.oscillating.length > 0 && (
        <p role="alert" className={styles.bad}>
          <StatusShape status="contradiction" /> {chatterWords(live.oscillating)}. What is shown is
          one moment of it.
        </p>
      )}
      {isWaiting(operate) && <p className={styles.waiting}>Working it out…</p>}
      {doubts.length > 0 && (
        <details className={styles.doubts}>
          <summary>
            <StatusShape status="undecided" />
            {doubts.length === 1
              ? "One thing is not known"
              : `${doubts.length} things are not known`}
          </summary>
          <ul>
            {doubts.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

/** What came of the last step, in a line or two. Read out as it changes. */
export function News() {
  return (
    <p className={styles.last} role="status" aria-live="polite">
      {lastWords(useLastPlayed())}
    </p>
  );
}

function useLastPlayed() {
  const last = useSelected((state) => state.operate.played.at(-1));
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  return { last, parts: operablesOf(job, machine).byId };
}

/** Told at most; the list of steps has them all. */
const MOST_TOLD = 4;

function lastWords({ last, parts }: ReturnType<typeof useLastPlayed>): string {
  if (!last) return "Everything at rest. Touch a switch on the drawing, or work it here.";
  const did = stepWords(last.step);
  const { outcome } = last;
  if (!outcome) return `${did}…`;
  if (outcome.refused) return `${did}: not done. ${outcome.refused}`;
  const told = outcome.events.slice(-MOST_TOLD).map((event) => eventWords(event, parts));
  return told.length === 0 ? `${did}: ${NOTHING_KNOWN}.` : `${did}: ${told.join("; ")}.`;
}
