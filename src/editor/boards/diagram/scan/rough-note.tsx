import { CircleAlert, X } from "lucide-react";
import { isRough, traceDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import styles from "./scan-work.module.css";
import { useTrace } from "./use-trace.ts";

/** Says once of a picture that leaves very much open that a better one is the shorter way. */
export function RoughNote() {
  const desk = traceDeskOf(useSession());
  const traced = useTrace((state) => state.traced);
  const isHeard = useTrace((state) => state.isRoughHeard);
  // The close look needs the room.
  const isLookedAt = useTrace((state) => state.place !== null);
  if (!desk || !traced || isHeard || isLookedAt || !isRough(traced)) return null;
  return (
    <div className={styles.strip} role="status">
      <CircleAlert className={styles.sign} aria-hidden />
      <span className={styles.what}>
        This picture is too rough to tell its lines
        {traced.isTooRough ? "" : ` at ${traced.questions.length} places`}: take it again nearer,
        square on and in more light, or scan it at 300 dpi.
      </span>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Put away"
        onClick={desk.hearRough}
      />
    </div>
  );
}
