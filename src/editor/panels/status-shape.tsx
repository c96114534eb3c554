import type { Severity } from "../../check/index.ts";
import type { Verdict } from "../../roles/index.ts";
import styles from "./status-shape.module.css";

type Status = Severity | Verdict;

/** Each status has an outline and a sign of its own, so that colour only helps. */
const SHAPES: Readonly<Record<Status, { outline: string; sign: string; hollow?: boolean }>> = {
  contradiction: { outline: "M7 1h6l6 6v6l-6 6H7l-6-6V7z", sign: "M7 7l6 6M13 7l-6 6" },
  contradicted: { outline: "M7 1h6l6 6v6l-6 6H7l-6-6V7z", sign: "M7 7l6 6M13 7l-6 6" },
  warning: { outline: "M10 1.5 19 18H1z", sign: "M10 7.5v5M10 15.2v.1" },
  note: { outline: "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18z", sign: "M10 9.5v5M10 5.8v.1" },
  agrees: { outline: "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18z", sign: "M5.8 10.4l2.8 2.9l5.6-6.4" },
  undecided: {
    outline: "M10 .5 19.5 10 10 19.5.5 10z",
    sign: "M7.8 8a2.2 2.2 0 1 1 3.2 2c-.7.4-1 .8-1 1.6M10 14.2v.1",
  },
  unproven: {
    outline: "M10 2.5a7.5 7.5 0 1 0 0 15a7.5 7.5 0 1 0 0-15z",
    sign: "M10 10v.1",
    hollow: true,
  },
};

/** The shape alone: a word always stands beside it. */
export function StatusShape({ status }: { status: Status }) {
  const { outline, sign, hollow = false } = SHAPES[status];
  return (
    <svg
      className={styles.shape}
      data-status={status}
      data-hollow={hollow}
      viewBox="0 0 20 20"
      aria-hidden="true"
    >
      <path className={styles.outline} d={outline} />
      <path className={styles.sign} d={sign} />
    </svg>
  );
}

/** A verdict or a severity as shape and word. */
export function StatusMark({ status, children }: { status: Status; children?: string }) {
  return (
    <span className={styles.mark} data-status={status}>
      <StatusShape status={status} />
      {children ?? status}
    </span>
  );
}
