import { X } from "lucide-react";
import { wordsForRole } from "../../../roles/index.ts";
import { forgetWord } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./words.module.css";

/** The words taught to this job, each to be taken back; nothing where there are none. */
export function TaughtWords() {
  const session = useSession();
  const taught = useSelected((state) => state.job.words) ?? [];
  if (taught.length === 0) return null;
  return (
    <details className={styles.list}>
      <summary>Words taught in this job ({taught.length})</summary>
      <ul>
        {taught.map(({ printed, role }) => (
          <li key={printed} className={styles.taught}>
            <span>
              “{printed}”: {wordsForRole(role)}
            </span>
            <Button
              tone="quiet"
              icon={<X aria-hidden />}
              aria-label={`Forget what “${printed}” means`}
              onClick={() => forgetWord(session, printed)}
            />
          </li>
        ))}
      </ul>
    </details>
  );
}
