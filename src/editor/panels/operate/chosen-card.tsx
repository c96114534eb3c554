import { X } from "lucide-react";
import { actsOf, doStep, operablesOf, readoutOf } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./chosen-card.module.css";
import { LineWord } from "./line-mark.tsx";
import { SwitchControl } from "./switch-control.tsx";

interface ChosenCardProps {
  /** What is told of: a wire, a pin, a cavity or a part. */
  of: string | undefined;
  /** Whether what can be done with it is offered too. */
  acts: boolean;
  /** Whether it can be put away, where it takes the room of others. */
  closes?: boolean;
}

/** One thing of the machine as it is now, and what can be done with it; nothing where there is none. */
export function ChosenCard({ of, acts, closes = false }: ChosenCardProps) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const live = useSelected((state) => state.operate.live);
  const readout = live && of !== undefined ? readoutOf(job, machine, live, of) : null;
  if (!live || !readout || of === undefined) return null;
  const part = acts ? operablesOf(job, machine).byId.get(of) : undefined;
  const possible = part ? actsOf(part, live.parts[of], job.systemVoltage) : [];
  return (
    <section className={styles.card} data-closes={closes} aria-label="Reading on the drawing">
      <p className={styles.says}>
        <strong>{readout.title}</strong>
        {readout.line && <LineWord state={readout.line} />}
        {readout.says.map((one) => (
          <span key={one}>{one}</span>
        ))}
      </p>
      {closes && (
        <Button
          tone="quiet"
          className={styles.close}
          icon={<X aria-hidden />}
          aria-label={`Put ${of} away`}
          onClick={() => session.show({ selection: [] })}
        />
      )}
      {part?.kind === "switch" && <SwitchControl part={part} bare />}
      {possible.length > 0 && (
        <div className={styles.acts}>
          {possible.map(({ label, step }) => (
            <Button key={label} onClick={() => doStep(session, step)}>
              {label}
            </Button>
          ))}
        </div>
      )}
    </section>
  );
}
