import { Hand } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { commandNamed } from "../../../session/index.ts";
import { CommandButton } from "../../app/command-button.tsx";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { TrialForm } from "./trial-form.tsx";
import { TrialItem } from "./trial-item.tsx";
import styles from "./trials.module.css";
import { useTrialKept } from "./unfinished-trial.ts";

/** What was tried on the machine at hand and what was seen, and the way to try more. */
export function TrialsPanel() {
  const machine = useSelected((state) =>
    state.job.machines.find((one) => one.id === state.machine),
  );
  const draft = useSelected((state) => state.trial);
  const [open, setOpen] = useState(draft !== null);
  useTrialKept();
  // Begun from anywhere, or found again after the tab was closed.
  useEffect(() => {
    if (draft) setOpen(true);
  }, [draft]);
  const body = useRef<HTMLDivElement>(null);
  const wasBegun = useRef(draft !== null);
  // Kept or discarded, its form is gone: the list of what is kept comes into view in its place.
  useEffect(() => {
    if (wasBegun.current && draft === null) body.current?.querySelector("button")?.focus();
    wasBegun.current = draft !== null;
  }, [draft]);
  if (!machine) return null;
  const { trials } = machine;
  return (
    <details
      className={styles.trials}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h2>Trials</h2>
        <span>
          {draft ? "one begun" : trials.length > 0 ? `${trials.length} kept` : "none yet"}
        </span>
      </summary>
      {open && (
        <div ref={body} className={styles.body}>
          {draft ? (
            <Begun machine={machine.id} />
          ) : (
            <CommandButton
              command={commandNamed("try")}
              icon={<Hand aria-hidden />}
              tone="plain"
              worded
            />
          )}
          {trials.length === 0 && !draft && (
            <p className={styles.none}>
              Nothing tried on this machine yet. Set up what you mean to do, and read what will move
              before you do it.
            </p>
          )}
          {trials.length > 0 && draft?.machine !== machine.id && (
            <ol className={styles.list} aria-label="Trials kept">
              {[...trials].reverse().map((trial) => (
                <TrialItem key={trial.id} trial={trial} machine={machine.id} />
              ))}
            </ol>
          )}
        </div>
      )}
    </details>
  );
}

/** The trial begun, where its machine is at hand; else the way to it. */
function Begun({ machine }: { machine: string }) {
  const session = useSession();
  const draft = useSelected((state) => state.trial);
  const owner = useSelected((state) =>
    state.job.machines.find((one) => one.id === state.trial?.machine),
  );
  if (!draft) return null;
  if (draft.machine === machine) return <TrialForm draft={draft} />;
  return (
    <div className={styles.elsewhere} role="status">
      <p>A trial was begun on {owner?.name ?? "a machine that was taken out of the job"}.</p>
      {owner && (
        <Button onClick={() => session.show({ machine: owner.id })}>Go on with it there</Button>
      )}
      <Button tone="quiet" onClick={() => session.show({ trial: null })}>
        Discard it
      </Button>
    </div>
  );
}
