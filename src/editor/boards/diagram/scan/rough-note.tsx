import { CircleAlert, X } from "lucide-react";
import { roughPictureWords } from "../../../../scan/index.ts";
import { isRough, traceDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { NoteStrip } from "./note-strip.tsx";
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
    <NoteStrip role="status" note="rough">
      <CircleAlert className={styles.sign} aria-hidden />
      <span className={styles.what}>
        {roughPictureWords(traced.isTooRough ? null : traced.questions.length)}
      </span>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Put away"
        onClick={desk.hearRough}
      />
    </NoteStrip>
  );
}
