import type { Probe } from "../../job/index.ts";
import { wordsForProbe } from "../../readings/index.ts";
import { useSelected } from "../session-context.tsx";
import styles from "./lead-field.module.css";
import { ProbePicker } from "./probe-picker.tsx";

interface LeadFieldProps {
  lead: "red" | "black";
  /** Where it is held; null while nowhere. */
  probe: Probe | null;
  /** The next tap on a board places it. */
  asking: boolean;
  onAsk: () => void;
  onPick: (probe: Probe) => void;
}

/** One lead of a meter: where it is held, and two ways to place it, by a tap on a board or from a list. */
export function LeadField({ lead, probe, asking, onAsk, onPick }: LeadFieldProps) {
  const job = useSelected((state) => state.job);
  const place = probe === null ? "nowhere yet" : wordsForProbe(job, probe);
  const says = asking ? "tap its place on a board" : place;
  return (
    <div className={styles.lead} data-lead={lead}>
      <button
        type="button"
        className={styles.probe}
        aria-pressed={asking}
        aria-label={`${lead} lead: ${says}`}
        onClick={onAsk}
      >
        <span className={styles.tip} aria-hidden="true" />
        <span>
          <span className={styles.name}>{lead} lead</span>
          {says}
        </span>
      </button>
      <ProbePicker lead={lead} job={job} onPick={onPick} />
    </div>
  );
}
