import { useEffect, useState } from "react";
import { useShownAnalysis } from "../session-context.tsx";
import styles from "./checking-mark.module.css";

/** A check that takes no longer than this is not worth a word. */
const PATIENCE_MS = 300;

/** Says quietly that the verdicts shown are those of before the last edit. */
export function CheckingMark() {
  const { current } = useShownAnalysis();
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (current) return;
    const timer = setTimeout(() => setLate(true), PATIENCE_MS);
    return () => {
      clearTimeout(timer);
      setLate(false);
    };
  }, [current]);
  return (
    <div className={styles.room} role="status" aria-live="polite">
      {late && !current && <span className={styles.mark}>checking…</span>}
    </div>
  );
}
