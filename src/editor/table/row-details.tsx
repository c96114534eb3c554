import { Gauge } from "lucide-react";
import { wordsForPrediction, wordsForSetup } from "../../readings/index.ts";
import { ROLE_IN_WORDS, rolesInWords, standingRole } from "../../roles/index.ts";
import { draftFor, newDraft, type OfferedReading, type PinRow } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { CorrectionButtons } from "../panels/findings/correction-buttons.tsx";
import { ReadingVerdictMark } from "../panels/reading-verdict.tsx";
import { beginReading } from "../panels/unfinished.ts";
import { TaughtWords, WordMeaning } from "../panels/words/index.ts";
import { Working } from "../panels/working.tsx";
import { useAnswer, useSelected, useSession } from "../session-context.tsx";
import { MeterProves } from "./meter-proves.tsx";
import styles from "./row-details.module.css";

/** What stands behind a row: the path in words, what to measure there, and what was measured. */
export function RowDetails({ row }: { row: PinRow }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const { cavity } = row;
  const tells = cavity !== null && row.pins.length > 0;
  const expected = useAnswer(tells ? { about: "cavity", cavity } : null);
  return (
    <div className={styles.details}>
      <section aria-label="What the circuit says">
        <h3>Circuit</h3>
        {row.role ? (
          <>
            <p>{row.role.sentence}</p>
            {row.role.fits.length > 1 && (
              <p className={styles.fits}>Fits: {rolesInWords(row.role.fits)}.</p>
            )}
            {row.role.adopted && (
              <>
                <p className={styles.fits}>
                  {standingRole(row.role) === null
                    ? `Adopted as ${ROLE_IN_WORDS[row.role.adopted]}, which no longer fits: the sheet prints what the circuit says.`
                    : `On the sheet as ${ROLE_IN_WORDS[row.role.adopted]}, adopted from the circuit.`}
                </p>
                <CorrectionButtons corrections={[{ does: "drop-role", pin: row.role.pin }]} />
              </>
            )}
            <WordMeaning pin={row.role.pin} />
            <TaughtWords />
          </>
        ) : (
          <p>
            {row.state === "blocked" || row.state === "empty"
              ? `This cavity is ${row.state}.`
              : "Match a pin of the diagram to this cavity to see what it does."}
          </p>
        )}
      </section>
      <section aria-label="Readings to take">
        <h3>A healthy machine shows</h3>
        {tells && expected === null ? (
          <p role="status">
            <Working>Working out the readings worth taking…</Working>
          </p>
        ) : expected === null || expected.length === 0 ? (
          <p className={styles.none}>Nothing that can be told from what is traced so far.</p>
        ) : (
          <ul className={styles.list}>
            {expected.map((one) => (
              <Expected
                key={JSON.stringify(one.setup)}
                expected={one}
                setup={wordsForSetup(job, one.setup)}
                onTake={() => beginReading(session, draftFor(one.setup))}
              />
            ))}
          </ul>
        )}
      </section>
      <section aria-label="Readings taken">
        <h3>Measured here</h3>
        {row.meterWaits && <Working />}
        {row.evidence.length === 0 && !row.meterWaits && (
          <p className={styles.none}>Nothing yet on this machine.</p>
        )}
        <ul className={styles.list}>
          {row.evidence.map(({ reading, value, verdict, setupWords, day }) => (
            <li key={reading.id}>
              <button
                type="button"
                className={styles.taken}
                onClick={() => session.show({ selection: [reading.id] })}
              >
                <span className={styles.value}>{value}</span>
                <ReadingVerdictMark verdict={verdict} />
                <span className={styles.how}>
                  {[setupWords, day].filter(Boolean).join(", ")}
                  {reading.note && ` · “${reading.note}”`}
                </span>
              </button>
            </li>
          ))}
        </ul>
        <MeterProves row={row} />
        <Button
          icon={<Gauge aria-hidden />}
          onClick={() => beginReading(session, newDraft(row.ref))}
        >
          Measure here
        </Button>
      </section>
    </div>
  );
}

interface ExpectedProps {
  expected: OfferedReading;
  setup: string;
  onTake: () => void;
}

function Expected({ expected, setup, onTake }: ExpectedProps) {
  const { moves, stateMoves } = expected.moves ?? { moves: [], stateMoves: [] };
  const acts = [...moves, ...stateMoves].join(", ");
  return (
    <li className={styles.expected}>
      <div>
        <span className={styles.value}>
          {wordsForPrediction(expected, expected.setup.quantity)}
        </span>
        <span className={styles.how}>{setup}</span>
        <span className={styles.how}>{expected.proves}</span>
        {acts !== "" && <span className={styles.acts}>Will move or bring on: {acts}.</span>}
      </div>
      <Button className={styles.take} onClick={onTake} aria-label={`Take this reading: ${setup}`}>
        Take it
      </Button>
    </li>
  );
}
