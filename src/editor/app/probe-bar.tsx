import { Gauge } from "lucide-react";
import { useSelected } from "../session-context.tsx";
import { Button } from "./controls/index.ts";
import styles from "./probe-bar.module.css";

/** On a phone the pad is out of sight while a probe is placed: says what is asked, and leads back. */
export function ProbeBar({ onBack }: { onBack: () => void }) {
  const draft = useSelected((state) => state.draft);
  if (!draft) return null;
  return (
    <div className={styles.bar} role="status">
      <span>
        {draft.asks
          ? `Tap where the ${draft.asks} lead goes`
          : "A reading is waiting for its value"}
      </span>
      <Button icon={<Gauge aria-hidden />} onClick={onBack}>
        To the pad
      </Button>
    </div>
  );
}
