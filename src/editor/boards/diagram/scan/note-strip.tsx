import { type ReactNode, useRef } from "react";
import styles from "./scan-work.module.css";
import { useKeptFocus } from "./use-kept-focus.ts";

interface NoteStripProps {
  /** `alert`: something went wrong. */
  role: "status" | "alert";
  /** Which of them it is, for its style. */
  note: "work" | "rough" | "words";
  children: ReactNode;
}

/** One thing told over the foot of the board. From a button that goes with it the keys go on to the board. */
export function NoteStrip({ role, note, children }: NoteStripProps) {
  const strip = useRef<HTMLDivElement>(null);
  return (
    <div ref={strip} className={styles.strip} role={role} data-note={note} {...useKeptFocus(strip)}>
      {children}
    </div>
  );
}
