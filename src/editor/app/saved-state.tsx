import { Check, CloudAlert, LoaderCircle } from "lucide-react";
import { useSyncExternalStore } from "react";
import { useJobDesk } from "./job-desk-context.tsx";
import styles from "./saved-state.module.css";

const clock = (iso: string) =>
  new Date(iso).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });

/** Says that nothing is lost, or loudly that it could be. */
export function SavedState() {
  const { status: store } = useJobDesk();
  const status = useSyncExternalStore(store.subscribe, store.get);
  if (status.state === "failed") {
    return (
      <span className={styles.state} data-state="failed" title={status.why}>
        <CloudAlert aria-hidden /> Not saved
      </span>
    );
  }
  if (status.state === "saving") {
    return (
      <span className={styles.state}>
        <LoaderCircle aria-hidden /> Saving
      </span>
    );
  }
  return (
    <span className={styles.state}>
      <Check aria-hidden /> <span className={styles.word}>Saved</span>
      {status.at && <span className={styles.time}>{clock(status.at)}</span>}
    </span>
  );
}
