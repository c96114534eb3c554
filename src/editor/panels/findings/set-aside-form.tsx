import { ListX, X } from "lucide-react";
import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import type { Finding } from "../../../check/index.ts";
import { setFindingAside, USUAL_REASONS } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSession } from "../../session-context.tsx";
import { localTime } from "../local-time.ts";
import { focusPanel } from "./focus-panel.ts";
import styles from "./set-aside-form.module.css";

/** Why a finding is set aside: one tap for the usual reasons, or in one's own words. */
export function SetAsideForm({ finding, onLeave }: { finding: Finding; onLeave: () => void }) {
  const session = useSession();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [reason, setReason] = useState(finding.setAsideBefore ?? "");
  const [wrong, setWrong] = useState(false);
  useEffect(() => field.current?.focus(), []);
  const take = (words: string) => {
    focusPanel(field.current);
    setFindingAside(session, finding, words, localTime(new Date()));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() === "") setWrong(true);
    else take(reason);
  };
  return (
    <form className={styles.form} aria-label="Set this finding aside" onSubmit={submit}>
      <label htmlFor={id}>Why it can be set aside; the sheet prints it</label>
      <input
        id={id}
        ref={field}
        data-own-escape
        value={reason}
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}wrong` : undefined}
        onChange={(event) => setReason(event.target.value)}
        onKeyDown={(event) => {
          if (event.key !== "Escape") return;
          event.stopPropagation();
          onLeave();
        }}
      />
      {wrong && (
        <p id={`${id}wrong`} className={styles.wrong} role="alert">
          Write a reason first: without it nobody would know why.
        </p>
      )}
      <div className={styles.acts}>
        <Button type="submit" tone="primary" icon={<ListX aria-hidden />}>
          Set it aside
        </Button>
        <Button tone="quiet" icon={<X aria-hidden />} onClick={onLeave}>
          Leave it
        </Button>
      </div>
      <fieldset className={styles.usual}>
        <legend>or in one tap</legend>
        {USUAL_REASONS.map((words) => (
          <Button key={words} onClick={() => take(words)}>
            {words}
          </Button>
        ))}
      </fieldset>
    </form>
  );
}
