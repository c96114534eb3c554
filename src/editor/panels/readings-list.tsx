import { useMemo } from "react";
import { formatQuantity } from "../../base/index.ts";
import type { Reading } from "../../job/index.ts";
import { wordsForSetup } from "../../readings/index.ts";
import { counterparts, draftOf } from "../../session/index.ts";
import { dayOf, type JudgedEvidence } from "../../sheet/index.ts";
import { useAnalysis, useAnswer, useSelected, useSession } from "../session-context.tsx";
import { EntryActs } from "./entry-acts.tsx";
import { ReadingVerdictMark } from "./reading-verdict.tsx";
import styles from "./readings-list.module.css";
import { unbroken } from "./unbroken.ts";
import { beginReading } from "./unfinished.ts";
import { Working } from "./working.tsx";

const EVIDENCE = { about: "evidence" } as const;

interface Listed {
  readonly reading: Reading;
  /** `24.10 V` */
  readonly value: string;
  /** Null while it is being judged. */
  readonly judged: JudgedEvidence | null;
}

function newestFirst(
  readings: readonly Reading[],
  judged: readonly JudgedEvidence[] | null,
): readonly Listed[] {
  const byId = new Map(judged?.map((one) => [one.reading.id, one]));
  return [...readings].reverse().map((reading) => ({
    reading,
    value: formatQuantity(reading.value, reading.quantity),
    judged: byId.get(reading.id) ?? null,
  }));
}

/** Every reading of the machine at hand, newest first, with what it came to. */
export function ReadingsList() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machineId = useSelected((state) => state.machine);
  const selection = useSelected((state) => state.selection);
  const analysis = useAnalysis();
  const machine = job.machines.find((one) => one.id === machineId);
  const judged = useAnswer(machine && machine.readings.length > 0 ? EVIDENCE : null);
  const readings = useMemo(() => newestFirst(machine?.readings ?? [], judged), [machine, judged]);
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
        {readings.map(({ reading, value, judged }) => (
          <li key={reading.id} data-lit={lit.has(reading.id)}>
            <button
              type="button"
              className={styles.body}
              aria-pressed={selection[0] === reading.id}
              onClick={() => session.show({ selection: [reading.id] })}
            >
              <span className={styles.line}>
                <span className={styles.value}>{value}</span>
                {judged ? <ReadingVerdictMark verdict={judged.verdict} /> : <Working />}
              </span>
              <span className={styles.how}>
                {unbroken(
                  [reading.id, wordsForSetup(job, reading), dayOf(reading.at)]
                    .filter(Boolean)
                    .join(", "),
                )}
              </span>
              {reading.note && <span className={styles.how}>“{reading.note}”</span>}
            </button>
            <span className={styles.acts}>
              <EntryActs
                name={`reading ${reading.id}`}
                again="Take"
                onAgain={() => beginReading(session, draftOf(reading, false))}
                onMend={() => beginReading(session, draftOf(reading, true))}
                onDelete={() => remove(reading.id)}
              />
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
