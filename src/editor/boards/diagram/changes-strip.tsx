import { Undo2 } from "lucide-react";
import { changesOf, commandNamed } from "../../../session/index.ts";
import { CommandButton } from "../../app/command-button.tsx";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./changes-strip.module.css";

/** Over the board: that a change is being recorded and where, or what the marks of changes mean. */
export function ChangesStrip() {
  const session = useSession();
  const recording = useSelected((state) => state.recording);
  const operating = useSelected((state) => state.operate.on);
  const changes = useSelected((state) => changesOf(state.job, state.machine));
  const name = useSelected(
    (state) => state.job.machines.find(({ id }) => id === state.machine)?.name ?? "",
  );
  if (recording) {
    return (
      <div className={styles.strip} data-recording role="status">
        <span className={styles.words}>
          <strong>Only on {name}:</strong> {recording.note}
        </span>
        <CommandButton
          command={commandNamed("back-to-diagram")}
          icon={<Undo2 aria-hidden />}
          tone="plain"
          worded
        />
      </div>
    );
  }
  if (changes.length === 0 || operating) return null;
  return (
    <button
      type="button"
      className={styles.strip}
      aria-label={`Changes of ${name}: ${changes.length}. Show the list`}
      onClick={() => session.show({ dialog: "changes" })}
    >
      <strong className={styles.words}>{name} differs</strong>
      <span className={styles.key}>
        <svg width="27" height="14" viewBox="0 0 27 14" aria-hidden>
          <path d="M1 7H26M5 3V11M11 3V11M17 3V11M23 3V11" />
        </svg>
        added
      </span>
      <span className={styles.key}>
        <svg width="27" height="14" viewBox="0 0 27 14" aria-hidden>
          <path d="M1 7H26" strokeDasharray="2 4" />
          <path d="M9 2L19 12M9 12L19 2" />
        </svg>
        taken out
      </span>
    </button>
  );
}
