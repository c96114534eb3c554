import { useState } from "react";
import { restPosition } from "../../circuit/index.ts";
import { ENGINE_STATES, type Job, type Part, type When } from "../../job/index.ts";
import { drawnJob, setSwitch, togglePlugged, toggleRemoved } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { useSelected } from "../session-context.tsx";
import { PartToggles } from "./part-toggles.tsx";
import styles from "./reading-pad.module.css";
import { Segments } from "./segments.tsx";

interface ReadingConditionsProps {
  job: Job;
  when: When;
  onChange: (when: When) => void;
}

type SwitchPart = Extract<Part, { kind: "switch" }>;

const ENGINE = ENGINE_STATES.map((one) => ({ value: one, text: one }));

/** With more switches than this only those touched show until asked for. */
const FEW_SWITCHES = 6;

/** In what state the machine is measured. Whatever is not touched is at rest and plugged in. */
export function ReadingConditions({ job, when, onChange }: ReadingConditionsProps) {
  const [all, setAll] = useState(false);
  const machine = useSelected((state) => state.machine);
  const { parts } = drawnJob(job, machine).diagram;
  const switches = parts.filter((part): part is SwitchPart => part.kind === "switch");
  const positions: Readonly<Record<string, string>> = when.switches ?? {};
  const shown =
    all || switches.length <= FEW_SWITCHES
      ? switches
      : switches.filter((part) => part.control === "key" || positions[part.id] !== undefined);
  const pluggable = parts.filter((part) => part.kind === "module" || part.kind === "inline");
  const removable = parts.filter((part) => REMOVABLE.has(part.kind));
  return (
    <>
      <h3>The machine’s state</h3>
      {shown.map((part) => {
        const rest = restPosition(part) ?? "";
        return (
          <Segments
            key={part.id}
            label={part.label ? `${part.id} ${part.label}` : part.id}
            value={positions[part.id] ?? rest}
            rest={rest}
            options={part.positions.map((position) => ({ value: position, text: position }))}
            onChange={(position) => onChange(setSwitch(when, part.id, position, rest))}
          />
        );
      })}
      {shown.length < switches.length && (
        <Button onClick={() => setAll(true)}>
          Show {switches.length - shown.length} more switches
        </Button>
      )}
      {pluggable.length > 0 && (
        <PartToggles
          label="Unplugged"
          parts={pluggable}
          chosen={when.unplugged ?? []}
          onToggle={(id) => onChange(togglePlugged(when, id))}
        />
      )}
      {removable.length > 0 && (
        <details className={styles.fold} open={(when.removed?.length ?? 0) > 0}>
          <summary>Taken out{when.removed?.length ? `: ${when.removed.join(", ")}` : ""}</summary>
          <PartToggles
            label="Taken out"
            parts={removable}
            chosen={when.removed ?? []}
            onToggle={(id) => onChange(toggleRemoved(when, id))}
          />
        </details>
      )}
      <Segments
        label="Engine"
        value={when.engine ?? "off"}
        rest="off"
        options={ENGINE}
        onChange={(engine) => onChange({ ...when, engine })}
      />
    </>
  );
}

/** What one takes out by hand to measure: a battery off, a fuse or a relay pulled, a bulb out. */
const REMOVABLE: ReadonlySet<Part["kind"]> = new Set([
  "battery",
  "fuse",
  "breaker",
  "relay",
  "lamp",
  "solenoid",
  "motor",
  "heater",
  "horn",
  "sender",
  "sensor",
  "resistor",
  "diode",
]);
