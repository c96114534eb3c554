import { Undo2 } from "lucide-react";
import { bringFindingBack, type OrderedFinding } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSession } from "../../session-context.tsx";
import { placesOf } from "./finding-item.tsx";
import { focusPanel } from "./focus-panel.ts";
import styles from "./set-aside-list.module.css";

interface SetAsideListProps {
  findings: readonly OrderedFinding[];
  lit: ReadonlySet<string>;
}

/** What was found and set aside: out of the way, never out of sight. */
export function SetAsideList({ findings, lit }: SetAsideListProps) {
  const session = useSession();
  if (findings.length === 0) return null;
  return (
    <details className={styles.aside}>
      <summary>Set aside ({findings.length})</summary>
      <ul>
        {findings.map(({ key, finding }) => (
          <li key={key} data-lit={lit.has(key)}>
            <span className={styles.head}>
              {finding.severity} · {placesOf(finding.subjects)}
            </span>
            <span>{finding.message}</span>
            <span className={styles.reason}>“{finding.setAside}”</span>
            <Button
              tone="quiet"
              icon={<Undo2 aria-hidden />}
              aria-label={`Bring back: ${finding.message}`}
              onClick={(event) => {
                focusPanel(event.currentTarget);
                bringFindingBack(session, finding);
              }}
            >
              Bring back
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
