import type { PinRow } from "../../session/index.ts";
import { chiefEvidence } from "../../sheet/index.ts";
import { StatusShape } from "../panels/status-shape.tsx";
import styles from "./pin-table.module.css";

/** The reading that matters most there: the one that settled it, else the newest. */
export function MeterCell({ row }: { row: PinRow }) {
  const chief = chiefEvidence(row.settledBy, row.evidence);
  if (!chief) {
    const isUnused = row.state === "empty" || row.state === "blocked";
    return <span className={styles.soft}>{isUnused ? "–" : "not measured"}</span>;
  }
  const others = row.evidence.length - 1;
  const confirmed = row.settledBy !== null && row.meterVerdict === "agrees";
  const status =
    row.meterVerdict === "contradicted"
      ? "contradicted"
      : confirmed
        ? "agrees"
        : chief.verdict === "outside"
          ? "warning"
          : null;
  const words = confirmed
    ? "confirmed by this"
    : row.meterVerdict === "contradicted"
      ? "contradicts the word"
      : chief.verdictWords;
  return (
    <span className={styles.meter}>
      <span className={styles.value}>
        {status && <StatusShape status={status} />}
        {chief.value}
      </span>
      <span className={styles.under}>
        {[words, chief.day, others > 0 ? `${others} more` : ""].filter(Boolean).join(", ")}
      </span>
    </span>
  );
}
