import { Play, Trash2 } from "lucide-react";
import {
  beginReplay,
  recordingsOf,
  removeRecording,
  renameRecording,
} from "../../../session/index.ts";
import { CommitField } from "../../app/commit-field.tsx";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./steps.module.css";

/** The recordings kept with this machine: replayed, renamed, deleted. */
export function Recordings() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const replayed = useSelected((state) => state.operate.replay?.recording);
  const recordings = recordingsOf(job, machine);
  if (recordings.length === 0) return null;
  return (
    <section className={styles.recordings} aria-label="Recordings of this machine">
      <h3>Kept with this machine</h3>
      <ul>
        {recordings.map(({ id, name, steps }) => (
          <li key={id} data-current={id === replayed}>
            <CommitField
              aria-label={`Name of the recording ${name}`}
              value={name}
              onCommit={(text) => {
                if (text.trim() !== "") renameRecording(session, id, text.trim());
              }}
            />
            <span className={styles.moment}>
              {steps.length} {steps.length === 1 ? "step" : "steps"}
            </span>
            <Button
              icon={<Play aria-hidden />}
              aria-label={`Replay ${name}`}
              onClick={() => beginReplay(session, id)}
            />
            <Button
              tone="quiet"
              icon={<Trash2 aria-hidden />}
              aria-label={`Delete the recording ${name}`}
              onClick={() => removeRecording(session, id)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
