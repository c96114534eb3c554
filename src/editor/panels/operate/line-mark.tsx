import type { LineState } from "../../../circuit/index.ts";
import { LINE_WORDS } from "../../../session/index.ts";
import styles from "./line-mark.module.css";

/** How a line is drawn on the board while it lies so, as a small piece of it: the legend's own mark. */
export function LineMark({ state }: { state: LineState }) {
  return (
    <svg className={styles.mark} viewBox="0 0 48 16" aria-hidden="true">
      <Casing state={state} />
      {state === "floating" ? (
        <path className={styles.wire} d="M2 8H46" strokeDasharray="4 4" />
      ) : state === "unknown" ? (
        <>
          <path className={styles.wire} d="M2 8H15M33 8H46" />
          <path
            className={styles.sign}
            d="M21.4 5.6a2.7 2.7 0 1 1 3.9 2.4c-.9.5-1.3 1-1.3 2M24 13v.1"
          />
        </>
      ) : (
        <path className={styles.wire} d="M2 8H46" />
      )}
    </svg>
  );
}

function Casing({ state }: { state: LineState }) {
  switch (state) {
    case "live":
      return <path className={styles.heavy} d="M2 8H46M14 2V14M34 2V14" />;
    case "live-through-load":
      return <path className={styles.rail} d="M2 4.5H46M2 11.5H46M14 2V14M34 2V14" />;
    case "between":
      return <path className={styles.rail} d="M2 4.5H46M2 11.5H46" strokeDasharray="10 5" />;
    case "ground-through-load":
      return <path className={styles.hatch} d="M6 8H46" strokeDasharray="2 9" />;
    case "ground":
      return <path className={styles.hatch} d="M3 8H46" strokeDasharray="2 3.2" />;
    default:
      return null;
  }
}

/** The mark and its word. */
export function LineWord({ state }: { state: LineState }) {
  return (
    <span className={styles.word} data-line={state}>
      <LineMark state={state} />
      {LINE_WORDS[state]}
    </span>
  );
}
