import type { LiveState } from "../../../circuit/index.ts";
import { chatterWords, newsOf, operablesOf } from "../../../session/index.ts";
import { useSelected } from "../../session-context.tsx";
import { StatusShape } from "../status-shape.tsx";
import news from "./news.module.css";
import styles from "./operate-panel.module.css";

const NO_DOUBTS: LiveState["doubts"] = [];

/** What stands in the way of a firm answer; nothing where nothing does. */
export function Hindrances() {
  const { live, failed } = useSelected((state) => state.operate);
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
      {/* As tall as the doubts that follow, so that nothing moves under a finger as they come. */}
      {!live && !failed && <p className={styles.waiting}>Working it out…</p>}
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

interface NewsProps {
  /** Where there is little room: less is told. */
  brief: boolean;
  /** Shows all that is not told here. */
  onMore: () => void;
}

/** What came of the last step, in a line or two. Read out as it changes. */
export function News({ brief, onMore }: NewsProps) {
  const played = useSelected((state) => state.operate.played);
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const isFailed = useSelected((state) => state.operate.failed !== null);
  const { says, more } = newsOf(played, operablesOf(job, machine).byId, brief ? 2 : 4, isFailed);
  return (
    <div className={news.last} data-brief={brief}>
      <p role="status" aria-live="polite">
        {says}
      </p>
      {more > 0 && (
        <button type="button" className={news.more} onClick={onMore}>
          and {more} more
        </button>
      )}
    </div>
  );
}
