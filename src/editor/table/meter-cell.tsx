import { wordsForQuantity } from "../../readings/index.ts";
import type { PinRow } from "../../session/index.ts";
import { chiefEvidence } from "../../sheet/index.ts";
import { StatusShape } from "../panels/status-shape.tsx";
import styles from "./pin-table.module.css";

/** The reading that matters most there: what confirmed the circuit, else what speaks of a fault. */
export function MeterCell({ row }: { row: PinRow }) {
  const chief = chiefEvidence(row.settledBy, row.evidence);
  if (!chief) {
    const isUnused = row.state === "empty" || row.state === "blocked";
    return <span className={styles.soft}>{isUnused ? "–" : "not measured"}</span>;
  }
  const others = row.evidence.filter((one) => one !== chief);
  const bad = others.filter((one) => one.verdict === "outside").length;
  const isConfirmed = row.settledBy !== null;
  const status = isConfirmed ? "agrees" : chief.verdict === "outside" ? "warning" : null;
  const words = isConfirmed
    ? `confirmed by ${wordsForQuantity(chief.reading)}`
    : chief.verdictWords;
  const more = others.length > 0 && bad === 0 ? `${others.length} more` : "";
  return (
    <span className={styles.meter}>
      <span className={styles.value}>
        {status && <StatusShape status={status} />}
        {chief.value}
      </span>
      <span className={styles.under}>{[words, chief.day, more].filter(Boolean).join(", ")}</span>
      {row.meterVerdict === "contradicted" && (
        <span className={styles.under} data-differs>
          ! contradicts the word
        </span>
      )}
      {bad > 0 && (
        <span className={styles.under} data-differs>
          ! {bad} not as expected
        </span>
      )}
    </span>
  );
}
