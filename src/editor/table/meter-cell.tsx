import { ROLE_NAMES } from "../../job/index.ts";
import { wordsForQuantity } from "../../readings/index.ts";
import type { PinRow } from "../../session/index.ts";
import { besidesChief, evidenceInWords, loadPhrases } from "../../sheet/index.ts";
import { StatusShape } from "../panels/status-shape.tsx";
import { unbroken } from "../panels/unbroken.ts";
import { Working } from "../panels/working.tsx";
import styles from "./pin-table.module.css";

/** The reading that says most about the cavity, with others that speak of a fault under it. */
export function MeterCell({ row }: { row: PinRow }) {
  const { chief, settledBy } = row;
  if (row.meterWaits) return <Working />;
  if (!chief) {
    const isUnused = row.state === "empty" || row.state === "blocked";
    return <span className={styles.soft}>{isUnused ? "–" : "not measured"}</span>;
  }
  const { named, more } = besidesChief(row);
  const status = settledBy ? "agrees" : chief.verdict === "outside" ? "warning" : null;
  // To chassis with the plug off is how a cavity is measured; anything else is said.
  const isUsual = chief.reach === "harness" && chief.between === "to chassis";
  const way = isUsual ? [] : [chief.between, ...chief.plugged];
  const load = settledBy ? [] : loadPhrases(chief.reading);
  const words = settledBy ? `confirmed by ${wordsForQuantity(chief.reading)}` : row.chiefWords;
  return (
    <span className={styles.meter}>
      <span className={styles.value}>
        {status && <StatusShape status={status} />}
        {chief.value}
      </span>
      <span className={styles.under}>
        {unbroken([...way, ...load, words, chief.day, more].filter(Boolean).join(", "))}
      </span>
      {row.role?.meterRuledOut && !settledBy && (
        <span className={styles.under}>
          the meter leaves {row.role.meterFits.length} of {ROLE_NAMES.length} roles
        </span>
      )}
      {row.meterVerdict === "contradicted" && (
        <span className={styles.under} data-differs>
          ! contradicts the word
        </span>
      )}
      {named.map((one) => (
        <span key={one.reading.id} className={styles.under} data-differs>
          ! {unbroken(evidenceInWords(one))}
        </span>
      ))}
    </span>
  );
}
