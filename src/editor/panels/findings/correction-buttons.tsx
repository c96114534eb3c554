import { Wrench } from "lucide-react";
import type { Correction } from "../../../check/index.ts";
import { correct, correctionLabel, drawnOf } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./correction-buttons.module.css";
import { focusPanel } from "./focus-panel.ts";

/** A button for each way to put something right; undo takes any of them back. */
export function CorrectionButtons({ corrections }: { corrections: readonly Correction[] }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const machine = useSelected((state) => state.machine);
  if (corrections.length === 0) return null;
  return (
    <div className={styles.buttons}>
      {corrections.map((correction) => (
        <Button
          key={JSON.stringify(correction)}
          icon={<Wrench aria-hidden />}
          onClick={(event) => {
            focusPanel(event.currentTarget);
            correct(session, correction);
          }}
        >
          <span>{correctionLabel(correction, { job, machine })}</span>
        </Button>
      ))}
    </div>
  );
}
