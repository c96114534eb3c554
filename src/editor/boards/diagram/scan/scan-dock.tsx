import { useSelected } from "../../../session-context.tsx";
import { FollowStrip } from "./follow-strip.tsx";
import { PlaceCard } from "./place-card.tsx";
import styles from "./scan-dock.module.css";

/** At the foot of the board: what the scan desk says of what was pointed at. */
export function ScanDock() {
  const open = useSelected((state) => state.scanDesk && !state.operate.on);
  if (!open) return null;
  return (
    <div className={styles.dock}>
      <PlaceCard />
      <FollowStrip />
    </div>
  );
}
