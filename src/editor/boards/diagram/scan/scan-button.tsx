import { createContext, type ReactNode, useContext } from "react";
import type { ScanStep } from "../../../../session/index.ts";
import { Tip } from "../../../app/controls/index.ts";
import styles from "./scan-bar.module.css";

interface ScanButtonProps {
  icon: ReactNode;
  /** A verb phrase: "Follow a line". */
  label: string;
  /** What it does of the work on a picture that has an order. */
  step?: ScanStep;
  /** What more there is to say on hover: keys, or what it does. */
  tip?: string;
  pressed?: boolean;
  disabled?: boolean;
  onClick: () => void;
}

/** What is best done next with the picture at hand; null where nothing is left of what has an order. */
export const NextStep = createContext<ScanStep | null>(null);

/** One thing that can be done with the picture: its sign, and its words beside or under it. */
export function ScanButton({
  icon,
  label,
  step,
  tip,
  pressed,
  disabled = false,
  onClick,
}: ScanButtonProps) {
  const isNext = useContext(NextStep) === step;
  return (
    <Tip text={tip ?? label}>
      <button
        type="button"
        className={styles.button}
        aria-label={label}
        aria-description={isNext ? "Next to do" : undefined}
        aria-pressed={pressed}
        data-up-next={isNext}
        disabled={disabled}
        onClick={onClick}
      >
        {icon}
        <span aria-hidden>{label}</span>
      </button>
    </Tip>
  );
}
