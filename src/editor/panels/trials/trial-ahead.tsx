import type { TrialOutcome } from "../../../readings/index.ts";
import { type Ahead, aheadInWords, operablesOf } from "../../../session/index.ts";
import { useSelected } from "../../session-context.tsx";
import { StatusShape } from "../status-shape.tsx";
import styles from "./trials.module.css";

/** What will move or come on, and what may, as solved: to be read before the trial is done. */
export function TrialAhead({ outcome }: { outcome: TrialOutcome | null }) {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  if (outcome === null) {
    return (
      <p className={styles.ahead} role="status">
        Working out what will move… Wait for it before you do anything.
      </p>
    );
  }
  if (outcome.refused !== null) {
    return (
      <p className={styles.ahead} data-acting="true" role="status">
        <StatusShape status="warning" />
        <span>What will move can’t be told. {outcome.refused}</span>
      </p>
    );
  }
  const lines = aheadInWords(outcome, operablesOf(job, machine).byId);
  const acting = lines.length > 0;
  return (
    <div className={styles.ahead} data-acting={acting} role="status">
      {acting && <StatusShape status="warning" />}
      <div>
        {!acting && <p>As drawn, nothing moves or comes on.</p>}
        {lines.map((line) => (
          <p key={line.lead}>
            {line.lead}: <strong>{few(line)}</strong>.
          </p>
        ))}
        {outcome.timed && <p>Something is still timed half a minute later.</p>}
        {acting && <p>Attachments down, pressure off, nobody within reach before you go on.</p>}
      </div>
    </div>
  );
}

/** Of what may move only so many are named: on a large drawing that nobody has finished it is most of it. */
const MOST_NAMED = 6;

const few = ({ how, names }: Ahead): string =>
  how === "will" || names.length <= MOST_NAMED
    ? names.join(", ")
    : `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more`;
