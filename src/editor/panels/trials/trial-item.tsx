import type { Id, Trial } from "../../../job/index.ts";
import {
  type Beside,
  besideCircuit,
  besideInWords,
  dropTrial,
  operablesOf,
  trialAgain,
  trialTitle,
} from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { EntryActs } from "../entry-acts.tsx";
import { StatusShape } from "../status-shape.tsx";
import styles from "./trials.module.css";
import { useTrialOutcome } from "./use-trial-outcome.ts";

/** A hint beside what was seen, and no verdict: the machine is broken, or the drawing is. */
const SHAPES = { agrees: "agrees", differs: "note", open: "undecided" } as const;

/** One trial of the list: what was done, and what was seen beside what the circuit does. */
export function TrialItem({ trial, machine }: { trial: Trial; machine: Id }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const outcome = useTrialOutcome(trial.when);
  const { byId } = operablesOf(job, machine);
  const busy = useSelected((state) => state.trial !== null);
  const begin = (mend: boolean) => session.show({ trial: trialAgain(machine, trial, mend) });
  const rows: readonly Beside[] = outcome ? besideCircuit(job, machine, trial, outcome) : [];
  return (
    <li>
      <p className={styles.title}>
        <strong>{trial.id}</strong> {trialTitle(trial)}
      </p>
      {outcome === null && <p className={styles.soft}>Working out what the circuit does…</p>}
      {outcome !== null && outcome.refused !== null && (
        <p className={styles.soft}>The circuit can’t be asked. {outcome.refused}</p>
      )}
      {rows.length > 0 && (
        <ul className={styles.rows}>
          {rows.map((row) => (
            <li key={row.part} data-verdict={row.verdict}>
              <StatusShape status={SHAPES[row.verdict]} />
              <span>{besideInWords(row, byId.get(row.part))}</span>
            </li>
          ))}
        </ul>
      )}
      {trial.note && <p className={styles.soft}>“{trial.note}”</p>}
      <span className={styles.acts}>
        <EntryActs
          name={`trial ${trial.id}`}
          again="Do"
          busy={busy}
          onAgain={() => begin(false)}
          onMend={() => begin(true)}
          onDelete={() =>
            session.edit(`Delete trial ${trial.id}`, (draft) => dropTrial(draft, machine, trial.id))
          }
        />
      </span>
    </li>
  );
}
