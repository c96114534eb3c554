import type { ReactNode } from "react";
import { Tip } from "../../../app/controls/index.ts";
import styles from "./scan-bar.module.css";

interface ScanButtonProps {
  icon: ReactNode;
  /** A verb phrase: "Follow a line". */
  label: string;
  /** Its verb, where there is no room for more: "Follow". */
  short: string;
  /** What more there is to say on hover: keys, or what it does. */
  tip?: string;
  pressed?: boolean;
  disabled?: boolean;
  onClick: () => void;
}

/** One thing that can be done with the picture: its sign, and its word beside or under it. */
export function ScanButton({
  icon,
  label,
  short,
  tip,
  pressed,
  disabled = false,
  onClick,
}: ScanButtonProps) {
  return (
    <Tip text={tip ?? label}>
      <button
        type="button"
        className={styles.button}
        aria-label={label}
        aria-pressed={pressed}
        disabled={disabled}
        onClick={onClick}
      >
        {icon}
        <span className={styles.long} aria-hidden>
          {label}
        </span>
        <span className={styles.short} aria-hidden>
          {short}
        </span>
      </button>
    </Tip>
  );
}
