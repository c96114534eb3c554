import { ChevronDown, ChevronRight } from "lucide-react";
import { type ReactNode, useId, useState } from "react";
import type { FoldedFindings } from "../../../session/index.ts";
import { StatusMark } from "../status-shape.tsx";
import styles from "./finding-item.module.css";
import { placesOf } from "./finding-item.tsx";

interface FoldedItemProps {
  folded: FoldedFindings;
  lit: boolean;
  children: ReactNode;
}

/** Parts that no wire comes to yet, as one row; `children`: a row for each, shown when it is unfolded. */
export function FoldedItem({ folded: { members }, lit, children }: FoldedItemProps) {
  const [open, setOpen] = useState(false);
  const list = useId();
  const subjects = members.flatMap(({ finding }) => finding.subjects);
  return (
    <li className={styles.item} data-severity="warning" data-lit={lit}>
      <button
        type="button"
        className={styles.body}
        aria-expanded={open}
        aria-controls={list}
        onClick={() => setOpen(!open)}
      >
        <span className={styles.title}>
          <StatusMark status="warning" />
          <span className={styles.subjects}>{placesOf(subjects)}</span>
        </span>
        <span className={styles.fold}>
          {open ? <ChevronDown aria-hidden /> : <ChevronRight aria-hidden />}
          {members.length} parts are wired to nothing yet
        </span>
      </button>
      <ol id={list} className={styles.folded} hidden={!open}>
        {open && children}
      </ol>
    </li>
  );
}
