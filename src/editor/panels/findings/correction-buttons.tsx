import { Wrench } from "lucide-react";
import type { Correction } from "../../../check/index.ts";
import { correct, correctionLabel, drawnOf } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./correction-buttons.module.css";
import { focusPanel } from "./focus-panel.ts";

/** A button for each way to put something right; undo takes any of them back. */
export function CorrectionButtons({ corrections }: { corrections: readonly Correction[] }) {
  if (corrections.length === 0) return null;
  return (
    <div className={styles.buttons}>
      {corrections.map((correction) => (
        <CorrectionButton key={JSON.stringify(correction)} correction={correction} />
      ))}
    </div>
  );
}

function CorrectionButton({ correction }: { correction: Correction }) {
  const session = useSession();
  const label = useSelected((state) =>
    correctionLabel(correction, { job: drawnOf(state), machine: state.machine }),
  );
  return (
    <Button
      icon={<Wrench aria-hidden />}
      onClick={(event) => {
        focusPanel(event.currentTarget);
        correct(session, correction);
      }}
    >
      <span>{label}</span>
    </Button>
  );
}
