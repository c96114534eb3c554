import { Check, Square, Undo } from "lucide-react";
import type { Squaring } from "../../../scan/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./square-desk.module.css";
import { cutSize, type Size } from "./square-work.ts";
import type { Making } from "./use-making.ts";

interface DeskFootProps {
  /** Of the picture as it came. */
  size: Size;
  squaring: Squaring;
  making: Making;
  problem: string | null;
  mayUse: boolean;
  /** Null where the picture is the original already. */
  onOriginal: (() => void) | null;
  onUse: () => void;
  onClose: () => void;
}

/** The ways out of the desk; while the picture is made, how far it is. */
export function DeskFoot(props: DeskFootProps) {
  const { size, squaring, making, problem, mayUse, onOriginal, onUse, onClose } = props;
  if (making.share !== null) {
    const percent = Math.round(100 * making.share);
    return (
      <div className={styles.foot} role="status">
        <span>Making the picture</span>
        <progress
          className={styles.share}
          max={100}
          value={percent}
          aria-label="Making the picture"
        />
        <Button icon={<Square aria-hidden />} onClick={making.stop}>
          Stop
        </Button>
      </div>
    );
  }
  const result = cutSize(squaring, size);
  return (
    <div className={styles.foot}>
      <Button icon={<Undo aria-hidden />} disabled={!onOriginal} onClick={() => onOriginal?.()}>
        Back to the original
      </Button>
      {problem ? (
        <p className={styles.told} role="alert">
          {problem}
        </p>
      ) : (
        <p className={`${styles.told} ${styles.size}`}>
          {result ? `${result.width} × ${result.height} px` : ""}
        </p>
      )}
      <Button className={styles.cancel} onClick={onClose}>
        Cancel
      </Button>
      <Button tone="primary" icon={<Check aria-hidden />} disabled={!mayUse} onClick={onUse}>
        Use this picture
      </Button>
    </div>
  );
}
