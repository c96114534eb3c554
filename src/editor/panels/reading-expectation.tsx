import { useMemo, useState } from "react";
import { parseQuantity } from "../../base/index.ts";
import type { Job, Reading } from "../../job/index.ts";
import {
  cautionsFor,
  type ReadingSetup,
  WHO_COMES_FIRST,
  wordsForPrediction,
} from "../../readings/index.ts";
import type { ReadingDraft } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { useAnswer } from "../session-context.tsx";
import { localTime } from "./local-time.ts";
import styles from "./reading-pad.module.css";
import { ReadingVerdictMark } from "./reading-verdict.tsx";
import { setupQuestion } from "./setup-question.ts";
import { StatusShape } from "./status-shape.tsx";
import { Working } from "./working.tsx";

interface ForDraft {
  job: Job;
  machine: string;
  draft: ReadingDraft;
}

/** A method that is wrong there, or wants care, says so before anything is typed. */
export function RefusedMethod({ draft }: { draft: ReadingDraft }) {
  const prediction = useAnswer(setupQuestion(draft))?.prediction ?? null;
  if (prediction === null) return null;
  if (prediction.invalid !== null) {
    return (
      <p className={styles.refused} role="status">
        <StatusShape status="contradicted" />
        <span>
          <strong>Not a valid reading.</strong> {prediction.invalid} It can be kept, and will be
          marked so.
        </span>
      </p>
    );
  }
  // that it floats is what the meter is to find out
  if (prediction.caution === null || prediction.floating) return null;
  return (
    <p className={styles.mind} role="status">
      <StatusShape status="warning" />
      <span>{prediction.caution}</span>
    </p>
  );
}

/**
 * What a healthy machine shows in this set-up: after the value is in, or when asked for, so that
 * nobody reads off the meter what he expects to see.
 */
export function ReadingExpectation({ job, machine, draft }: ForDraft) {
  const [asked, setAsked] = useState<string | null>(null);
  const question = setupQuestion(draft);
  const prediction = useAnswer(question)?.prediction ?? null;
  const reading = useDraftReading(job, machine, draft, question?.setup ?? null);
  const judged = useAnswer(
    reading && prediction?.invalid === null ? { about: "reading", reading } : null,
  );
  if (question === null || (prediction !== null && prediction.invalid !== null)) return null;
  const key = JSON.stringify(question);
  if (reading === null && asked !== key) {
    return <Button onClick={() => setAsked(key)}>What should it show?</Button>;
  }
  if (prediction === null || (reading !== null && judged === null)) {
    return (
      <div className={styles.expectation} role="status">
        <p>
          A healthy machine shows <Working />
        </p>
      </div>
    );
  }
  return (
    <div className={styles.expectation} role="status">
      <p>
        A healthy machine shows{" "}
        <strong>{wordsForPrediction(judged ?? prediction, draft.quantity)}</strong>
        {prediction.uncertain !== null && `: ${prediction.uncertain}`}
      </p>
      {prediction.floating && <p>{prediction.caution}</p>}
      {judged && <ReadingVerdictMark verdict={judged.verdict} />}
    </div>
  );
}

/** The reading as far as it is typed, to be judged; null before there is a value. */
function useDraftReading(
  job: Job,
  machine: string,
  draft: ReadingDraft,
  setup: ReadingSetup | null,
): Reading | null {
  const mended = job.machines
    .find(({ id }) => id === machine)
    ?.readings.find(({ id }) => id === draft.mends);
  // one that is mended was taken when it was, with the battery of that day
  const takenAt = mended?.at;
  const isMended = mended !== undefined;
  const parsed = parseQuantity(draft.value, draft.quantity);
  const value = parsed.ok ? parsed.value : null;
  const set = JSON.stringify(setup);
  return useMemo(() => {
    const known = JSON.parse(set) as ReadingSetup | null;
    if (known === null || value === null) return null;
    const at = isMended ? takenAt : localTime(new Date());
    return { ...known, id: "draft", value, ...(at === undefined ? {} : { at }) };
  }, [set, value, isMended, takenAt]);
}

/** What to mind at this very step. */
export function ReadingCautions({ draft }: { draft: ReadingDraft }) {
  return (
    <section className={styles.cautions} aria-label="Cautions">
      <ul>
        {cautionsFor(draft).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p>{WHO_COMES_FIRST}</p>
    </section>
  );
}
