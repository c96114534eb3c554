import { Timer, TimerOff } from "lucide-react";
import { ENGINE_STATES } from "../../../job/index.ts";
import { commandNamed, doStep, momentWords } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { Segments } from "../segments.tsx";
import styles from "./controls.module.css";

const ENGINE = ENGINE_STATES.map((one) => ({ value: one, text: one }));

/** The engine, and the time that passes: by itself while something is timed, or by hand. */
export function EngineAndTime() {
  const session = useSession();
  const engine = useSelected((state) => state.operate.live?.when.engine ?? "off");
  const seconds = useSelected((state) => state.operate.live?.seconds ?? 0);
  const nextIn = useSelected((state) => state.operate.live?.nextIn ?? null);
  const runs = useSelected((state) => state.operate.timeRuns);
  return (
    <div className={styles.machine}>
      <Segments
        label="Engine"
        value={engine}
        rest="off"
        options={ENGINE}
        onChange={(to) => doStep(session, { do: "engine", engine: to })}
      />
      <fieldset className={styles.time}>
        <legend>
          Time <output className={styles.clock}>{momentWords(seconds)}</output>
        </legend>
        <Button onClick={() => commandNamed("wait-1").run(session)}>1 s passes</Button>
        <Button onClick={() => commandNamed("wait-10").run(session)}>10 s</Button>
        <Button
          aria-pressed={runs}
          icon={runs ? <Timer aria-hidden /> : <TimerOff aria-hidden />}
          onClick={() => commandNamed("time-runs").run(session)}
        >
          {runs ? "Runs by itself" : "Held"}
        </Button>
        {nextIn !== null && !runs && (
          <Button tone="primary" onClick={() => doStep(session, { do: "wait", seconds: nextIn })}>
            Go on {Number(nextIn.toFixed(2))} s, when something happens
          </Button>
        )}
      </fieldset>
    </div>
  );
}
