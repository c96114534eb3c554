import { type ReactNode, useId, useState } from "react";
import type { Part } from "../../../job/index.ts";
import { actsOf, doStep, operablesOf, partWords } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./controls.module.css";
import { EngineAndTime } from "./engine-and-time.tsx";
import { SwitchControl } from "./switch-control.tsx";

/** Rows shown before the user narrows them down: a whole machine has thousands. */
const FIRST_ROWS = 40;
const FEW = 10;

/** Everything that can be operated, as a list: what the board does by touch is done here by keyboard. */
export function ControlsTab() {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const { switches, fuses, plugged, loads, others } = operablesOf(job, machine);
  const [sought, setSought] = useState("");
  const id = useId();
  const fits = (part: Part) =>
    `${part.id} ${part.label ?? ""} ${part.place ?? ""}`
      .toLowerCase()
      .includes(sought.trim().toLowerCase());
  const many = switches.length + fuses.length + plugged.length + loads.length > FEW * 2;
  return (
    <>
      <EngineAndTime />
      {many && (
        <div className={styles.seek}>
          <label htmlFor={id}>Only those with</label>
          <input
            id={id}
            type="search"
            value={sought}
            onChange={(event) => setSought(event.target.value)}
          />
        </div>
      )}
      <Group title="Switches" parts={switches.filter(fits)} open>
        {(part) => <SwitchControl key={part.id} part={part} />}
      </Group>
      <Group title="What it does" parts={loads.filter(fits)} open={loads.length <= FEW * 2}>
        {(part) => <PartRow key={part.id} part={part} />}
      </Group>
      <Group title="Fuses and breakers" parts={fuses.filter(fits)} open={fuses.length <= FEW}>
        {(part) => <PartRow key={part.id} part={part} />}
      </Group>
      <Group title="Modules and plugs" parts={plugged.filter(fits)} open={plugged.length <= FEW}>
        {(part) => <PartRow key={part.id} part={part} />}
      </Group>
      <Group title="Other parts" parts={others.filter(fits)} open={false}>
        {(part) => <PartRow key={part.id} part={part} />}
      </Group>
    </>
  );
}

interface GroupProps<P extends Part> {
  title: string;
  parts: readonly P[];
  open: boolean;
  children: (part: P) => ReactNode;
}

function Group<P extends Part>({ title, parts, open, children }: GroupProps<P>) {
  const [all, setAll] = useState(false);
  if (parts.length === 0) return null;
  const shown = all ? parts : parts.slice(0, FIRST_ROWS);
  return (
    <details className={styles.group} open={open}>
      <summary>
        {title}
        <span className={styles.count}>{parts.length}</span>
      </summary>
      <div className={styles.rows}>
        {shown.map(children)}
        {shown.length < parts.length && (
          <Button onClick={() => setAll(true)}>Show all {parts.length}</Button>
        )}
      </div>
    </details>
  );
}

/** A part, how it is now, and what can be done with it. */
function PartRow({ part }: { part: Part }) {
  const session = useSession();
  const voltage = useSelected((state) => state.job.systemVoltage);
  const state = useSelected((now) => now.operate.live?.parts[part.id]);
  const words = partWords(part, state);
  return (
    <div className={styles.part} data-on={state?.on ?? false} data-loud={state?.blown ?? false}>
      <span className={styles.partName}>
        <strong>{part.id}</strong> {part.label}
      </span>
      <span className={styles.partState}>{words}</span>
      <span className={styles.acts}>
        {actsOf(part, state, voltage).map(({ label, step }) => (
          <Button key={label} tone="quiet" onClick={() => doStep(session, step)}>
            {label}
          </Button>
        ))}
      </span>
    </div>
  );
}
