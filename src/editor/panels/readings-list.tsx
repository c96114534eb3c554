import { Pencil, Repeat2, Trash2 } from "lucide-react";
import { useMemo } from "react";
import { counterparts, draftOf } from "../../session/index.ts";
import { judgedEvidence } from "../../sheet/index.ts";
import { Button, Tip } from "../app/controls/index.ts";
import { useAnalysis, useSelected, useSession } from "../session-context.tsx";
import { ReadingVerdictMark } from "./reading-verdict.tsx";
import styles from "./readings-list.module.css";
import { beginReading } from "./unfinished.ts";

/** Every reading of the machine at hand, newest first, with what it came to. */
export function ReadingsList() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machineId = useSelected((state) => state.machine);
  const selection = useSelected((state) => state.selection);
  const analysis = useAnalysis();
  const machine = job.machines.find((one) => one.id === machineId);
  const readings = useMemo(
    () =>
      [...(machine?.readings ?? [])]
        .reverse()
        .map((reading) => judgedEvidence(job, machineId, reading)),
    [job, machineId, machine],
  );
  const lit = useMemo(
    () => counterparts(job, analysis, selection).refs,
    [job, analysis, selection],
  );
  const remove = (id: string) => {
    session.edit(`Delete reading ${id}`, (draft) => {
      const owner = draft.machines.find((one) => one.id === machineId);
      if (owner) owner.readings = owner.readings.filter((one) => one.id !== id);
    });
    session.show({ selection: [] });
  };
  return (
    <section className={styles.panel} aria-label="Readings">
      <header className={styles.head}>
        <h2>Readings</h2>
        <span>{readings.length > 0 && `${readings.length} on ${machine?.name}`}</span>
      </header>
      {readings.length === 0 && (
        <p className={styles.none}>
          Nothing measured on this machine yet. Open a row of the pin table for the readings worth
          taking there.
        </p>
      )}
      <ol className={styles.list}>
        {readings.map(({ reading, value, verdict, setupWords, day }) => (
          <li key={reading.id} data-lit={lit.has(reading.id)}>
            <button
              type="button"
              className={styles.body}
              aria-pressed={selection[0] === reading.id}
              onClick={() => session.show({ selection: [reading.id] })}
            >
              <span className={styles.line}>
                <span className={styles.value}>{value}</span>
                <ReadingVerdictMark verdict={verdict} />
              </span>
              <span className={styles.how}>
                {[reading.id, setupWords, day].filter(Boolean).join(", ")}
              </span>
              {reading.note && <span className={styles.how}>“{reading.note}”</span>}
            </button>
            <span className={styles.acts}>
              <Tip text="Take it again">
                <Button
                  tone="quiet"
                  icon={<Repeat2 aria-hidden />}
                  aria-label={`Take reading ${reading.id} again`}
                  onClick={() => beginReading(session, draftOf(reading, false))}
                />
              </Tip>
              <Tip text="Mend it">
                <Button
                  tone="quiet"
                  icon={<Pencil aria-hidden />}
                  aria-label={`Mend reading ${reading.id}`}
                  onClick={() => beginReading(session, draftOf(reading, true))}
                />
              </Tip>
              <Tip text="Delete it">
                <Button
                  tone="quiet"
                  icon={<Trash2 aria-hidden />}
                  aria-label={`Delete reading ${reading.id}`}
                  onClick={() => remove(reading.id)}
                />
              </Tip>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
