import { useSelected, useSession } from "../session-context.tsx";
import styles from "./top-bar.module.css";

const USUAL_VOLTS = [12, 24, 48];

/** The system voltage: lamps, coils and predictions are reckoned from it. */
export function VoltagePicker() {
  const session = useSession();
  const volts = useSelected((state) => state.job.systemVoltage);
  const choices = USUAL_VOLTS.includes(volts) ? USUAL_VOLTS : [...USUAL_VOLTS, volts];
  return (
    <select
      className={styles.volts}
      aria-label="System voltage"
      value={volts}
      onChange={(event) => {
        const next = Number(event.target.value);
        session.edit(`Set the system to ${next} V`, (draft) => {
          draft.systemVoltage = next;
        });
      }}
    >
      {choices.map((choice) => (
        <option key={choice} value={choice}>
          {choice} V
        </option>
      ))}
    </select>
  );
}
