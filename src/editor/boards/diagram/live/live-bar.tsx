import { Maximize, RotateCcw, Timer, TimerOff, X, ZoomIn, ZoomOut } from "lucide-react";
import { ENGINE_STATES } from "../../../../job/index.ts";
import { commandNamed, doStep } from "../../../../session/index.ts";
import { CommandButton, keysOf } from "../../../app/command-button.tsx";
import { Button, Tip } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import bar from "../toolbar.module.css";
import styles from "./live-bar.module.css";

/** In place of the drawing tools while the machine on the board is operated. */
export function LiveBar() {
  const session = useSession();
  const engine = useSelected((state) => state.operate.live?.when.engine ?? "off");
  const runs = useSelected((state) => state.operate.timeRuns);
  const stop = commandNamed("stop-operating");
  const second = commandNamed("wait-1");
  const time = commandNamed("time-runs");
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
        <select
          aria-label="Engine"
          value={engine}
          onChange={(event) => {
            const to = ENGINE_STATES.find((one) => one === event.target.value);
            if (to) doStep(session, { do: "engine", engine: to });
          }}
        >
          {ENGINE_STATES.map((one) => (
            <option key={one} value={one}>
              Engine {one}
            </option>
          ))}
        </select>
      </label>
      <Tip text={`Time runs by itself while something is timed (${keysOf(time)})`}>
        <Button
          tone="quiet"
          aria-label={time.label}
          aria-pressed={runs}
          icon={runs ? <Timer aria-hidden /> : <TimerOff aria-hidden />}
          onClick={() => time.run(session)}
        />
      </Tip>
      <Tip text={`${second.label} (${keysOf(second)})`}>
        <Button tone="quiet" onClick={() => second.run(session)}>
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
