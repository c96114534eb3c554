import { CornerDownRight, Pause, Play, SkipBack } from "lucide-react";
import {
  endReplay,
  nextReplayStep,
  operablesOf,
  replayTo,
  runReplay,
} from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { StepItem } from "./step-item.tsx";
import styles from "./steps.module.css";

/** A recording being gone through: its steps, where it stands, and what came of those done. */
export function ReplayView() {
  const session = useSession();
  const replay = useSelected((state) => state.operate.replay);
  const played = useSelected((state) => state.operate.played);
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  if (!replay) return null;
  const { steps, runs, name } = replay;
  const parts = operablesOf(job, machine).byId;
  const over = played.length >= steps.length;
  return (
    <section className={styles.steps} aria-label={`Replay of ${name}`}>
      <h3>{name}</h3>
      <p className={styles.hint}>
        {played.length} of {steps.length} steps done
      </p>
      <div className={styles.replayBar}>
        <Button
          icon={<SkipBack aria-hidden />}
          aria-label="Back to the beginning"
          disabled={played.length === 0}
          onClick={() => replayTo(session, 0)}
        />
        <Button
          icon={<CornerDownRight aria-hidden />}
          disabled={over || runs}
          onClick={() => nextReplayStep(session)}
        >
          Next step
        </Button>
        <Button
          icon={runs ? <Pause aria-hidden /> : <Play aria-hidden />}
          onClick={() => runReplay(session, !runs)}
        >
          {runs ? "Hold" : "Run through"}
        </Button>
        <Button onClick={() => endReplay(session)}>Leave</Button>
      </div>
      <ol>
        {steps.map((step, index) => (
          <StepItem
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what a step is
            key={index}
            step={step}
            outcome={played[index]?.outcome ?? null}
            parts={parts}
            state={index === played.length - 1 ? "now" : index < played.length ? "done" : "to come"}
            {...(index === played.length - 1
              ? {}
              : { onGo: () => replayTo(session, index + 1), goLabel: "Show" })}
          />
        ))}
      </ol>
    </section>
  );
}
