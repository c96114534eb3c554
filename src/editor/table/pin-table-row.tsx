import { ChevronDown, ChevronRight } from "lucide-react";
import { type KeyboardEvent, type MouseEvent, memo } from "react";
import { standingRole } from "../../roles/index.ts";
import type { PinRow } from "../../session/index.ts";
import { StatusMark } from "../panels/status-shape.tsx";
import { MeterCell } from "./meter-cell.tsx";
import { PinPicker } from "./pin-picker.tsx";
import styles from "./pin-table.module.css";
import { PrintedCell } from "./printed-cell.tsx";
import { RowDetails } from "./row-details.tsx";
import { WireCell } from "./wire-cell.tsx";

interface PinTableRowProps {
  row: PinRow;
  /** Lit up as a counterpart of the selection. */
  lit: boolean;
  chosen: boolean;
  open: boolean;
  /** The one row that Tab comes to; the arrow keys lead on from there. */
  reachable: boolean;
  columns: number;
  acts: RowActs;
}

/** What can be done to a row; the same object for as long as the table is there. */
export interface RowActs {
  readonly onChoose: (row: PinRow) => void;
  readonly onToggle: (row: PinRow) => void;
  readonly onKeyDown: (event: KeyboardEvent, row: PinRow) => void;
}

const UNUSED_WORDS = {
  empty: "empty",
  blocked: "blocked",
  untied: "no pin matched",
} as const;

/** Drawn again only when something in it is another. */
export const PinTableRow = memo(function PinTableRow({
  row,
  lit,
  chosen,
  open,
  reachable,
  columns,
  acts,
}: PinTableRowProps) {
  const unused = row.state === "empty" || row.state === "blocked";
  // A tap on a field or a button inside the row is for that, and chooses the row besides.
  const onClick = (event: MouseEvent) => {
    if (event.target instanceof Element && event.target.closest("[data-portal]")) return;
    acts.onChoose(row);
  };
  const Chevron = open ? ChevronDown : ChevronRight;
  const detailsId = `details-${row.key}`;
  return (
    <>
      <tr
        className={styles.row}
        data-row={row.key}
        data-chosen={chosen}
        data-lit={lit}
        data-unused={unused}
        data-verdict={row.verdict ?? "none"}
        aria-selected={chosen}
        aria-label={nameOf(row)}
        tabIndex={reachable ? 0 : -1}
        onClick={onClick}
        onDoubleClick={() => acts.onToggle(row)}
        onKeyDown={(event) => acts.onKeyDown(event, row)}
      >
        <th scope="row" className={styles.mark} data-column="mark">
          <button
            type="button"
            className={styles.opener}
            aria-expanded={open}
            aria-controls={open ? detailsId : undefined}
            aria-label={`${open ? "Close" : "Open"} ${nameOf(row)}`}
            onClick={(event) => {
              event.stopPropagation();
              acts.onToggle(row);
            }}
          >
            <Chevron aria-hidden size={18} />
            <span className={styles.markText}>{row.mark || "–"}</span>
          </button>
        </th>
        <td data-column="pin">
          <PinPicker row={row} />
        </td>
        <td data-column="printed">
          <PrintedCell row={row} />
        </td>
        <td data-column="circuit">
          {row.circuit !== "" ? (
            <span data-undecided={row.verdict === "undecided"}>{row.circuit}</span>
          ) : (
            <span className={styles.soft}>
              {row.state in UNUSED_WORDS
                ? UNUSED_WORDS[row.state as keyof typeof UNUSED_WORDS]
                : "not traced"}
            </span>
          )}
        </td>
        <td data-column="meter">
          <MeterCell row={row} />
        </td>
        <td data-column="wire">
          <WireCell row={row} />
        </td>
        <td data-column="verdict">
          {row.verdict && <StatusMark status={row.verdict} />}
          {row.role && standingRole(row.role) !== null && (
            <div className={styles.soft}>adopted for the sheet</div>
          )}
        </td>
      </tr>
      {open && (
        <tr className={styles.detailsRow}>
          <td id={detailsId} colSpan={columns}>
            <RowDetails row={row} />
          </td>
        </tr>
      )}
    </>
  );
});

const nameOf = (row: PinRow) =>
  row.cavity === null ? `pin ${row.ref}, no cavity` : `cavity ${row.mark}`;
