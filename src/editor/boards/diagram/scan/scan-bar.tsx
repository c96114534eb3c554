import { drawnOf, pictureFileOf, scanStepOf } from "../../../../session/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { useScanProgress } from "../../../use-scan-progress.ts";
import { FollowButton } from "./follow-button.tsx";
import { PartsButton } from "./parts-button.tsx";
import { PartsPanel } from "./parts-panel.tsx";
import styles from "./scan-bar.module.css";
import { NextStep } from "./scan-button.tsx";
import { CleanButton, SquareButton } from "./square-buttons.tsx";
import { TraceAllButton } from "./trace-all-button.tsx";
import { useTrace } from "./use-trace.ts";
import { WordsButton } from "./words-button.tsx";
import { WordsPanel } from "./words-panel.tsx";

/**
 * What can be done with the sheet's picture, in the order in which it is best done. Each button is a
 * component of its own, which also brings what it opens.
 */
export function ScanBar() {
  const open = useSelected((state) => state.scanDesk);
  const pictured = useSelected(pictureFileOf) !== null;
  const job = useSelected(drawnOf);
  const sheet = useSelected((state) => state.sheet);
  const progress = useScanProgress();
  const isLookedAt = useTrace((state) => state.place !== null) ?? false;
  if (!open || !pictured) return null;
  const next = scanStepOf(job, sheet, progress);
  return (
    <NextStep value={next}>
      <div className={styles.bar} role="toolbar" aria-label="Scan desk">
        <SquareButton />
        <CleanButton />
        <PartsButton />
        <WordsButton />
        <FollowButton />
        <TraceAllButton />
      </div>
      <div className={styles.lists} data-aside={isLookedAt}>
        <PartsPanel />
        <WordsPanel />
      </div>
    </NextStep>
  );
}
