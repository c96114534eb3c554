import { useState } from "react";
import { backTo, keepRecording, operablesOf, stepsToKeep } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { Recordings } from "./recordings.tsx";
import { ReplayView } from "./replay-view.tsx";
import { StepItem } from "./step-item.tsx";
import styles from "./steps.module.css";

/** What was done, what came of each step, and the recordings of this machine. */
export function StepsTab() {
  const replaying = useSelected((state) => state.operate.replay !== null);
  return (
    <>
      {replaying ? <ReplayView /> : <Played />}
      <Recordings />
    </>
  );
}

function Played() {
  const session = useSession();
  const played = useSelected((state) => state.operate.played);
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const parts = operablesOf(job, machine).byId;
  if (played.length === 0) {
    return (
      <p className={styles.hint}>
        Nothing done yet. Every switch you work, fuse you pull and second that passes is listed here
        with what happens because of it.
      </p>
    );
  }
  return (
    <section className={styles.steps} aria-label="What was done">
      <ol>
        {played.map(({ step, outcome }, index) => (
          <StepItem
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what a step is
            key={index}
            step={step}
            outcome={outcome}
            parts={parts}
            state={index === played.length - 1 ? "now" : "done"}
            {...(index < played.length - 1
              ? { onGo: () => backTo(session, index + 1), goLabel: "Back to here" }
              : {})}
          />
        ))}
      </ol>
      <KeepForm disabled={stepsToKeep(played).length === 0} />
    </section>
  );
}

function KeepForm({ disabled }: { disabled: boolean }) {
  const session = useSession();
  const [name, setName] = useState("");
  const keep = () => {
    const title = name.trim();
    if (title === "" || disabled) return;
    keepRecording(session, title);
    setName("");
    session.show({ notice: { tone: "info", text: `Kept with this machine: ${title}` } });
  };
  return (
    <form
      className={styles.keep}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <input
        aria-label="Name of these steps"
        placeholder="Name these steps"
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Button type="submit" disabled={disabled || name.trim() === ""}>
        Keep these steps
      </Button>
    </form>
  );
}
