import { CircleAlert, Square, X } from "lucide-react";
import { useSyncExternalStore } from "react";
import { LOOKING_FOR_WORDS, pageDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { NoteStrip } from "./note-strip.tsx";
import styles from "./scan-work.module.css";
import { useWordDesk } from "./use-words.ts";

const never = () => () => {};

/** What is being worked out on the picture, with the way to stop it; or what went wrong. */
export function ScanWork() {
  const desk = pageDeskOf(useSession());
  const work = useSyncExternalStore(desk?.subscribe ?? never, () => desk?.get().work ?? null);
  const problem = useSyncExternalStore(desk?.subscribe ?? never, () => desk?.get().problem ?? null);
  const reading = useWordDesk()?.get().reading ?? null;
  if (!desk) return null;
  // The queue of words tells of it, and stops it.
  if (work?.what === LOOKING_FOR_WORDS && reading !== null) return null;
  if (work) {
    const percent = Math.round(work.share * 100);
    return (
      <NoteStrip role="status" note="work">
        <span className={styles.what}>{work.what}</span>
        <progress className={styles.share} max={100} value={percent} aria-label={work.what} />
        <Button icon={<Square aria-hidden />} onClick={desk.callOff}>
          Stop
        </Button>
      </NoteStrip>
    );
  }
  if (problem === null) return null;
  return (
    <NoteStrip role="alert" note="work">
      <CircleAlert className={styles.sign} aria-hidden />
      <span className={styles.what}>{problem}</span>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Put away"
        data-rest
        onClick={desk.forgetProblem}
      />
    </NoteStrip>
  );
}
