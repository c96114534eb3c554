import { type Comparison, type ComparisonRow, wordsForAmong } from "../../../session/index.ts";
import { StatusMark } from "../status-shape.tsx";
import { CompareCell } from "./compare-cell.tsx";
import styles from "./compare-table.module.css";
import { LookedAt } from "./looked-at.tsx";

interface CompareTableProps {
  comparison: Comparison;
  rows: readonly ComparisonRow[];
  /** False while a newer one is being worked out. */
  isCurrent: boolean;
}

/** One row a cavity: the diagram, then the machines side by side. The cavity stays in sight. */
export function CompareTable({ comparison, rows, isCurrent }: CompareTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so that the keyboard must reach it
    <section className={styles.frame} aria-label="Comparison" aria-busy={!isCurrent} tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col" className={`${styles.head} ${styles.cavity}`}>
              Cavity
            </th>
            <th scope="col" className={styles.head}>
              Diagram
            </th>
            {comparison.machines.map(({ id, name, serial }) => (
              <th key={id} scope="col" className={styles.head}>
                {name}
                {serial && <span className={styles.serial}>{serial}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.key} row={row} comparison={comparison} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ row, comparison }: { row: ComparisonRow; comparison: Comparison }) {
  const among = wordsForAmong(row);
  return (
    <tr>
      <th scope="row" className={styles.cavity}>
        <span className={styles.mark}>{row.mark}</span>
        {row.pin && <span className={styles.soft}>{row.pin}</span>}
      </th>
      <td className={styles.cell}>
        <div className={styles.lines}>
          <span className={styles.drawn}>
            <LookedAt look={row.drawn} />
          </span>
          {row.printed !== "" && <span>“{row.printed}”</span>}
          {among !== "" && <StatusMark status="warning">{among}</StatusMark>}
        </div>
      </td>
      {row.cells.map((cell, index) => (
        <CompareCell
          key={cell.machine}
          row={row}
          cell={cell}
          name={comparison.machines[index]?.name ?? cell.machine}
        />
      ))}
    </tr>
  );
}
