import { type FormEvent, useId, useState } from "react";
import { echoQuantity, parseQuantity } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import type { CheckName } from "../../readings/index.ts";
import {
  type CheckDraft,
  checkLacking,
  checkOf,
  isBatteryCheck,
  isMeterCheck,
  keepCheck,
  measureOf,
  newCheckDraft,
} from "../../session/index.ts";
import { LOAD_TEST_SECONDS, leastUnderLoad } from "../../standards/index.ts";
import { Button } from "../app/controls/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./first-checks.module.css";
import { localTime } from "./local-time.ts";

interface CheckFormProps {
  check: CheckName;
  machine: Id;
  title: string;
  onDone: () => void;
}

/** How each check is done; common practice, the numbers as the tables have them. */
function howTo(check: CheckName, systemVoltage: number): string {
  switch (check) {
    case "battery-at-rest":
      return "All off for a few hours, or surface charge taken off with the headlamps. Across the posts, not the clamps.";
    case "battery-under-load":
      return `After about ${LOAD_TEST_SECONDS} s of its test load, or while cranking with the engine kept from starting: ${leastUnderLoad(systemVoltage)} V at least. Keep clear of what turns.`;
    case "meter-before":
      return "On a source whose volts you know, before the first reading.";
    case "meter-after":
      return "On the same source again, after the last reading.";
    case "leads-together":
      return "Tips held firmly together, the meter set to ohms. Zero it if it can.";
  }
}

/** Where one first check is typed in; Enter keeps it. */
export function CheckForm({ check, machine, title, onDone }: CheckFormProps) {
  const session = useSession();
  const systemVoltage = useSelected((state) => state.job.systemVoltage);
  const [draft, setDraft] = useState<CheckDraft>(() => newCheckDraft(check));
  const [tried, setTried] = useState(false);
  const missing = checkLacking(draft);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const made = checkOf(draft, session.get().job, localTime(new Date()));
    if (!made) return setTried(true);
    session.edit(`Keep the check ${title.toLowerCase()}`, (next) => keepCheck(next, machine, made));
    onDone();
  };
  const measure = measureOf(check);
  const parsed = parseQuantity(draft.value, measure);
  return (
    <form className={styles.form} onSubmit={keep} aria-label={title}>
      <p>{howTo(check, systemVoltage)}</p>
      <div className={styles.fields}>
        <Field
          label={measure === "ohms" ? "Ohms" : "Volts"}
          value={draft.value}
          first
          onChange={(value) => setDraft({ ...draft, value })}
        />
        {isMeterCheck(check) && (
          <Field
            label="Known volts"
            value={draft.known}
            onChange={(known) => setDraft({ ...draft, known })}
          />
        )}
        {isBatteryCheck(check) && (
          <Field
            label="°C, if known"
            value={draft.celsius}
            onChange={(celsius) => setDraft({ ...draft, celsius })}
          />
        )}
        <output aria-label="Taken for">
          {parsed.ok ? echoQuantity(parsed.value, measure) : ""}
        </output>
      </div>
      {tried && missing !== null && (
        <p className={styles.problem} role="alert">
          {missing}
        </p>
      )}
      <span className={styles.acts}>
        <Button type="submit" tone="primary">
          Keep it
        </Button>
        <Button tone="quiet" onClick={onDone}>
          Cancel
        </Button>
      </span>
    </form>
  );
}

interface FieldProps {
  label: string;
  value: string;
  /** Where typing begins. */
  first?: boolean;
  onChange: (value: string) => void;
}

function Field({ label, value, first = false, onChange }: FieldProps) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: the form opens because somebody asked to type here
        autoFocus={first}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}
