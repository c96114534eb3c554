import { pictureFileOf } from "../../../../session/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { FollowButton } from "./follow-button.tsx";
import { PartsButton } from "./parts-button.tsx";
import { PartsPanel } from "./parts-panel.tsx";
import styles from "./scan-bar.module.css";
import { CleanButton, SquareButton } from "./square-buttons.tsx";
import { TraceAllButton } from "./trace-all-button.tsx";
import { WordsButton } from "./words-button.tsx";
import { WordsPanel } from "./words-panel.tsx";

/**
 * What can be done with the sheet's picture, in the order in which it is best done. Each button is a
 * component of its own, which also brings what it opens.
 */
export function ScanBar() {
  const open = useSelected((state) => state.scanDesk);
  const pictured = useSelected(pictureFileOf) !== null;
  if (!open || !pictured) return null;
  return (
    <>
      <div className={styles.bar} role="toolbar" aria-label="Scan desk">
        <SquareButton />
        <CleanButton />
        <PartsButton />
        <FollowButton />
        <TraceAllButton />
        <WordsButton />
      </div>
      <PartsPanel />
      <WordsPanel />
    </>
  );
}
