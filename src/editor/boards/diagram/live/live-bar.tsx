import { Maximize, RotateCcw, Timer, TimerOff, X, ZoomIn, ZoomOut } from "lucide-react";
import { commandNamed, doStep } from "../../../../session/index.ts";
import { CommandButton, keysOf } from "../../../app/command-button.tsx";
import { Button, Tip } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import bar from "../toolbar.module.css";
import styles from "./live-bar.module.css";

const ENGINE = ["off", "cranking", "running"] as const;

/** In place of the drawing tools while the machine on the board is operated. */
export function LiveBar() {
  const session = useSession();
  const engine = useSelected((state) => state.operate.live?.when.engine ?? "off");
  const runs = useSelected((state) => state.operate.timeRuns);
  const stop = commandNamed("stop-operating");
  return (
    <div className={bar.bar} role="toolbar" aria-label="Operating">
      <Tip text={`${stop.label} (${keysOf(commandNamed("operate"))})`}>
        <Button
          tone="primary"
          icon={<X aria-hidden />}
          aria-label={stop.label}
          onClick={() => stop.run(session)}
        >
          Stop
        </Button>
      </Tip>
      <label className={styles.engine}>
        <span className={styles.wide}>Engine</span>
        <select
          aria-label="Engine"
          value={engine}
          onChange={(event) => {
            const to = ENGINE.find((one) => one === event.target.value);
            if (to) doStep(session, { do: "engine", engine: to });
          }}
        >
          {ENGINE.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </label>
      <Tip text="Time runs by itself while something is timed (T)">
        <Button
          tone="quiet"
          aria-label="Let time run"
          aria-pressed={runs}
          icon={runs ? <Timer aria-hidden /> : <TimerOff aria-hidden />}
          onClick={() => commandNamed("time-runs").run(session)}
        />
      </Tip>
      <Tip text="Let 1 s pass (.)">
        <Button tone="quiet" onClick={() => commandNamed("wait-1").run(session)}>
          +1 s
        </Button>
      </Tip>
      <span className={styles.wide}>
        <CommandButton command={commandNamed("start-over")} icon={<RotateCcw aria-hidden />} />
      </span>
      <span className={bar.spring} />
      <span className={bar.zoom}>
        <CommandButton command={commandNamed("zoom-out")} icon={<ZoomOut aria-hidden />} />
        <CommandButton command={commandNamed("zoom-in")} icon={<ZoomIn aria-hidden />} />
      </span>
      <CommandButton command={commandNamed("zoom-to-fit")} icon={<Maximize aria-hidden />} />
    </div>
  );
}
