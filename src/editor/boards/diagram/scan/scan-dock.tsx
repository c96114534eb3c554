import { useSelected } from "../../../session-context.tsx";
import { FollowStrip } from "./follow-strip.tsx";
import { PlaceCard } from "./place-card.tsx";
import { RoughNote } from "./rough-note.tsx";
import styles from "./scan-dock.module.css";
import { ScanWork } from "./scan-work.tsx";
import { WordsNote } from "./words-note.tsx";

/** Over the foot of the board, which stays as large: what is worked out, and what was pointed at. */
export function ScanDock() {
  const open = useSelected((state) => state.scanDesk && !state.operate.on);
  if (!open) return null;
  return (
    <div className={styles.dock}>
      <ScanWork />
      <RoughNote />
      <WordsNote />
      <PlaceCard />
      <FollowStrip />
    </div>
  );
}
