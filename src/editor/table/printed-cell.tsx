import { useState } from "react";
import { ownerOf, splitRef } from "../../job/index.ts";
import { listOr, wordsForRole } from "../../roles/index.ts";
import { type PinRow, setPrinted } from "../../session/index.ts";
import { CommitField } from "../app/commit-field.tsx";
import { RolePick } from "../panels/words/index.ts";
import { useSession } from "../session-context.tsx";
import styles from "./pin-table.module.css";

/**
 * The word on the diagram; struck through where the circuit contradicts it, with what it is. One that
 * nobody knows is asked about.
 */
export function PrintedCell({ row }: { row: PinRow }) {
  const session = useSession();
  const [editing, setEditing] = useState(false);
  const pin = row.role?.pin ?? (row.printed === null ? undefined : row.pins[0]);
  if (row.printed === null || pin === undefined) return <span className={styles.soft}>–</span>;
  const wrong = row.verdict === "contradicted";
  const label = `Printed word of ${pin}`;
  if (editing) {
    return (
      <CommitField
        className={styles.wordField}
        aria-label={label}
        value={row.printed}
        mayBeEmpty
        live
        autoFocus
        onFocus={(event) => event.currentTarget.select()}
        onCommit={(word, merge) =>
          session.edit(
            `Change the word of ${ownerOf(pin)} pin ${splitRef(pin).name}`,
            (draft) => setPrinted(draft, pin, word),
            merge,
          )
        }
        onBlurCapture={() => setEditing(false)}
      />
    );
  }
  return (
    <>
      <button
        type="button"
        className={styles.word}
        aria-label={`${label}: ${row.printed || "none"}${wrong ? ", wrong" : ""}. Change it`}
        onClick={() => setEditing(true)}
      >
        {row.printed === "" ? (
          <span className={styles.soft}>no word</span>
        ) : wrong ? (
          <>
            <s>{row.printed}</s>
            <span className={styles.correction}>
              {" "}
              → {listOr((row.role?.fits ?? []).map(wordsForRole))}
            </span>
          </>
        ) : (
          row.printed
        )}
      </button>
      {row.asksWord && <RolePick printed={row.printed} short />}
    </>
  );
}
