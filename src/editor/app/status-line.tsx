import { Info, TriangleAlert, X } from "lucide-react";
import { useEffect } from "react";
import { useSelected, useSession } from "../session-context.tsx";
import { Button } from "./controls/index.ts";
import styles from "./status-line.module.css";

const INFO_STAYS_MS = 6000;

/** The last notice. What went well goes by itself; what went wrong stays until it is put away. */
export function StatusLine() {
  const session = useSession();
  const notice = useSelected((state) => state.notice);
  useEffect(() => {
    if (notice?.tone !== "info") return;
    const timer = setTimeout(() => {
      if (session.get().notice === notice) session.show({ notice: null });
    }, INFO_STAYS_MS);
    return () => clearTimeout(timer);
  }, [notice, session]);
  return (
    <div className={styles.room} role="status" aria-live="polite">
      {notice && (
        <div className={styles.notice} data-tone={notice.tone}>
          {notice.tone === "error" ? (
            <TriangleAlert role="img" aria-label="Did not work:" />
          ) : (
            <Info aria-hidden />
          )}
          <span>{notice.text}</span>
          <Button
            tone="quiet"
            icon={<X aria-hidden />}
            aria-label="Put the message away"
            onClick={() => session.show({ notice: null })}
          />
        </div>
      )}
    </div>
  );
}
