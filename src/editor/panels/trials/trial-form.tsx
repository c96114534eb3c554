import { X } from "lucide-react";
import { type FormEvent, useEffect, useRef } from "react";
import { cautionsForTrial, WHO_COMES_FIRST } from "../../../readings/index.ts";
import {
  doneInWords,
  keepTrial,
  type TrialDraft,
  trialLacks,
  trialOf,
  trialTitle,
} from "../../../session/index.ts";
import { LabelledField } from "../../app/commit-field.tsx";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { ReadingConditions } from "../reading-conditions.tsx";
import { SeenList } from "./seen-list.tsx";
import { TrialAhead } from "./trial-ahead.tsx";
import styles from "./trials.module.css";
import { useTrialOutcome } from "./use-trial-outcome.ts";

/** Where a trial is set up, read through before it is done, and what was seen is entered. */
export function TrialForm({ draft }: { draft: TrialDraft }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const outcome = useTrialOutcome(draft.when);
  const change = (next: Partial<TrialDraft>) => session.show({ trial: { ...draft, ...next } });
  const missing = trialLacks(draft);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    // Enter in the note's field commits it first: what counts is the draft as it is now.
    const { trial, job: now } = session.get();
    const made = trial && trialOf(trial, now);
    if (!made) return;
    const label = `${trial.mends ? "Mend" : "Keep"} trial ${made.id}: ${trialTitle(made)}`;
    session.edit(label, (next) => keepTrial(next, trial.machine, made));
    session.show({ trial: null });
  };
  const steps = doneInWords(draft.when);
  const title = useRef<HTMLHeadingElement>(null);
  // Whoever began it by key goes on by Tab from here, and by whatever way its top is in sight.
  useEffect(() => {
    title.current?.focus();
  }, []);
  return (
    <form className={styles.form} onSubmit={keep} aria-label="Trial">
      <header className={styles.head}>
        <h3 ref={title} tabIndex={-1}>
          {draft.mends ? `Trial ${draft.mends}` : "A trial"}
        </h3>
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Discard this trial"
          onClick={() => session.show({ trial: null })}
        />
      </header>
      <section className={styles.cautions} aria-label="Cautions">
        <p>{WHO_COMES_FIRST}</p>
        <ul>
          {cautionsForTrial(draft.when).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
      <ReadingConditions job={job} when={draft.when} onChange={(when) => change({ when })} />
      <section className={styles.steps} aria-label="What is done">
        <h3>What is done, in this order</h3>
        {steps.length === 0 ? (
          <p>Nothing yet: everything at rest and plugged in.</p>
        ) : (
          <ol>
            {steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        )}
      </section>
      <TrialAhead outcome={outcome} />
      <p className={styles.soft}>Then do it, if it is safe to, and look.</p>
      <SeenList draft={draft} outcome={outcome} />
      <LabelledField
        label="Note"
        className={styles.note}
        value={draft.note}
        mayBeEmpty
        live
        onCommit={(note) => change({ note })}
      />
      <Button type="submit" tone="primary" className={styles.keep} disabled={missing !== null}>
        {missing ?? (draft.mends ? "Keep the change" : "Keep this trial")}
      </Button>
    </form>
  );
}
