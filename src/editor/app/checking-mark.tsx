import { useEffect, useState } from "react";
import { useShownAnalysis } from "../session-context.tsx";
import styles from "./checking-mark.module.css";

/** A check that takes no longer than this is not worth a word. */
const PATIENCE_MS = 300;

/** Says quietly that the verdicts shown are those of before the last edit: all of them, or those of readings. */
export function CheckingMark() {
  const { current, again } = useShownAnalysis();
  const isWhole = current && again.length === 0;
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (isWhole) return;
    const timer = setTimeout(() => setLate(true), PATIENCE_MS);
    return () => {
      clearTimeout(timer);
      setLate(false);
    };
  }, [isWhole]);
  return (
    <div className={styles.room} role="status" aria-live="polite">
      {late && !isWhole && (
        <span className={styles.mark}>{current ? "checking readings again…" : "checking…"}</span>
      )}
    </div>
  );
}
