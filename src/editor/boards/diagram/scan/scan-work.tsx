import { CircleAlert, Square, X } from "lucide-react";
import { useSyncExternalStore } from "react";
import { pageDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import styles from "./scan-work.module.css";

const never = () => () => {};

/** What is being worked out on the picture, with the way to stop it; or what went wrong. */
export function ScanWork() {
  const desk = pageDeskOf(useSession());
  const work = useSyncExternalStore(desk?.subscribe ?? never, () => desk?.get().work ?? null);
  const problem = useSyncExternalStore(desk?.subscribe ?? never, () => desk?.get().problem ?? null);
  if (!desk) return null;
  if (work) {
    const percent = Math.round(work.share * 100);
    return (
      <div className={styles.strip} role="status">
        <span className={styles.what}>{work.what}</span>
        <progress className={styles.share} max={100} value={percent} aria-label={work.what} />
        <Button icon={<Square aria-hidden />} onClick={desk.callOff}>
          Stop
        </Button>
      </div>
    );
  }
  if (problem === null) return null;
  return (
    <div className={styles.strip} role="alert">
      <CircleAlert className={styles.sign} aria-hidden />
      <span className={styles.what}>{problem}</span>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Put away"
        onClick={desk.forgetProblem}
      />
    </div>
  );
}
