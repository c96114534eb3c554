import { useMemo, useState } from "react";
import { parseQuantity } from "../../base/index.ts";
import type { Job } from "../../job/index.ts";
import {
  cautionsFor,
  judgeReading,
  predict,
  WHO_COMES_FIRST,
  wordsForPrediction,
} from "../../readings/index.ts";
import { type ReadingDraft, setupOf } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { localTime } from "./local-time.ts";
import styles from "./reading-pad.module.css";
import { ReadingVerdictMark } from "./reading-verdict.tsx";
import { StatusShape } from "./status-shape.tsx";

interface ForDraft {
  job: Job;
  machine: string;
  draft: ReadingDraft;
}

/** The prediction for the set-up on the pad; null until both leads are somewhere. */
function usePrediction({ job, machine, draft }: ForDraft) {
  const { quantity, red, black, when, with: instrument } = draft;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is typed does not change the prediction
  return useMemo(() => {
    const setup = setupOf(draft);
    return setup && red !== black ? { setup, prediction: predict(job, machine, setup) } : null;
  }, [job, machine, quantity, red, black, when, instrument]);
}

/** A method that is wrong there, or wants care, says so before anything is typed. */
export function RefusedMethod(props: ForDraft) {
  const prediction = usePrediction(props)?.prediction ?? null;
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
export function ReadingExpectation(props: ForDraft) {
  const { job, machine, draft } = props;
  const [asked, setAsked] = useState<string | null>(null);
  const found = usePrediction(props);
  if (!found || found.prediction.invalid !== null) return null;
  const { setup, prediction } = found;
  const value = parseQuantity(draft.value, draft.quantity);
  const key = JSON.stringify(setup);
  if (!value.ok && asked !== key) {
    return <Button onClick={() => setAsked(key)}>What should it show?</Button>;
  }
  const mended = job.machines
    .find(({ id }) => id === machine)
    ?.readings.find(({ id }) => id === draft.mends);
  // one that is mended was taken when it was, with the battery of that day
  const at = mended ? mended.at : localTime(new Date());
  const judged = value.ok
    ? judgeReading(job, machine, { ...setup, id: "draft", value: value.value, at })
    : null;
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
