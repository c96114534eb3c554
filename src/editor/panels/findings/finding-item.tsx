import { ListX, Route } from "lucide-react";
import { memo, useRef, useState } from "react";
import type { Correction } from "../../../check/index.ts";
import type { OrderedFinding } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { StatusMark } from "../status-shape.tsx";
import { CorrectionButtons } from "./correction-buttons.tsx";
import styles from "./finding-item.module.css";
import { SetAsideForm } from "./set-aside-form.tsx";
import { SwitchButtons } from "./switch-buttons.tsx";

interface FindingItemProps {
  ordered: OrderedFinding;
  chosen: boolean;
  lit: boolean;
  /** It is from before the last edit, and its readings are being looked at again. */
  again: boolean;
  /** What may be offered to put it right. */
  offers: readonly Correction[];
  /** Whether showing the path leaves this list. */
  leads: boolean;
  onShow: (key: string) => void;
  onPath: (key: string) => void;
}

/** One finding: what it says, the path that proves it, what puts it right, and the way to set it aside. */
export const FindingItem = memo(function FindingItem(props: FindingItemProps) {
  const { chosen, lit, again, offers, leads, onShow, onPath } = props;
  const { finding, key } = props.ordered;
  const [asking, setAsking] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const hasPath = (finding.because?.length ?? 0) > 0;
  return (
    <li
      className={styles.item}
      data-severity={finding.severity}
      data-chosen={chosen}
      data-lit={lit}
    >
      <button
        type="button"
        className={styles.body}
        aria-pressed={chosen}
        onClick={() => onShow(key)}
      >
        <span className={styles.title}>
          <StatusMark status={finding.severity} />
          <span className={styles.subjects}>{placesOf(finding.subjects)}</span>
        </span>
        {again && (
          <span className={styles.before}>From before the last edit: being checked again…</span>
        )}
        <span className={styles.message}>{finding.message}</span>
        {finding.setAsideBefore !== undefined && (
          <span className={styles.before}>
            Set aside before: “{finding.setAsideBefore}”. What it rests on has changed since.
          </span>
        )}
      </button>
      <CorrectionButtons corrections={again ? [] : offers} />
      {!again && <SwitchButtons finding={finding} />}
      <div className={styles.acts}>
        {hasPath && (
          <Button
            tone="quiet"
            className={styles.path}
            icon={<Route aria-hidden />}
            aria-pressed={leads ? undefined : chosen}
            onClick={() => onPath(key)}
          >
            {chosen && !leads ? "Path shown" : "Show path"}
          </Button>
        )}
        <Button
          ref={opener}
          tone="quiet"
          icon={<ListX aria-hidden />}
          aria-expanded={asking}
          onClick={() => setAsking(!asking)}
        >
          Set aside
        </Button>
      </div>
      {asking && (
        <SetAsideForm
          finding={finding}
          onLeave={() => {
            setAsking(false);
            opener.current?.focus();
          }}
        />
      )}
    </li>
  );
});

/** The first few things it is about, as they are called. */
export function placesOf(subjects: readonly string[]): string {
  const few = subjects.slice(0, 3).join(", ");
  return subjects.length > 3 ? `${few} …` : few;
}
