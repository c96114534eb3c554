import { useMemo, useState } from "react";
import { parseQuantity } from "../../base/index.ts";
import { kindOf } from "../../circuit/index.ts";
import type { Job } from "../../job/index.ts";
import {
  cautionsFor,
  comesOn,
  judgeReading,
  predict,
  WHO_COMES_FIRST,
  wordsForPrediction,
} from "../../readings/index.ts";
import { type ReadingDraft, setupOf } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
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

/** A method that is wrong there says so before anything is typed. */
export function RefusedMethod(props: ForDraft) {
  const invalid = usePrediction(props)?.prediction.invalid ?? null;
  if (invalid === null) return null;
  return (
    <p className={styles.refused} role="status">
      <StatusShape status="contradicted" />
      <span>
        <strong>Not a valid reading.</strong> {invalid} It can be kept, and will be marked so.
      </span>
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
  const judged = value.ok
    ? judgeReading(job, machine, { ...setup, id: "draft", value: value.value })
    : null;
  return (
    <div className={styles.expectation} role="status">
      <p>
        A healthy machine shows <strong>{wordsForPrediction(prediction, draft.quantity)}</strong>
        {prediction.uncertain !== null && `: ${prediction.uncertain}`}
      </p>
      {judged && <ReadingVerdictMark verdict={judged.verdict} />}
    </div>
  );
}

/** What will move or come on while the reading is taken, as solved: to be read before it is. */
export function WhatMoves({ job, machine, draft }: ForDraft) {
  const { red, black, quantity, when, with: instrument } = draft;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is typed moves nothing
  const acting = useMemo(() => {
    const setup = setupOf(draft);
    return setup && red !== black ? comesOn(job, machine, setup) : null;
  }, [job, machine, quantity, red, black, when, instrument]);
  if (acting === null) return null;
  const unplugged = when.unplugged ?? [];
  const driving = job.diagram.parts.filter(
    (part) => part.kind === "module" && !part.behaviour && !unplugged.includes(part.id),
  );
  const names = acting
    .map((part) => [kindOf(part.kind).title, part.id, part.label].filter(Boolean).join(" "))
    .join(", ");
  const unknown = driving.map((part) => part.id).join(", ");
  return (
    <p className={styles.moves} data-acting={acting.length > 0}>
      {acting.length > 0 && <StatusShape status="warning" />}
      <span>
        {acting.length === 0
          ? "As drawn, nothing moves or comes on."
          : `Moves or comes on: ${names}.`}
        {unknown !== "" && ` What ${unknown} drives is not known and may come besides.`}
      </span>
    </p>
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
