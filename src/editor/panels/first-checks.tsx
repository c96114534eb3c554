import { Trash2 } from "lucide-react";
import { useState } from "react";
import { formatQuantity } from "../../base/index.ts";
import { FIRST_CHECKS, type FirstCheck, type Machine } from "../../job/index.ts";
import {
  batteryUse,
  type CheckName,
  judgeCheck,
  lastCheck,
  meterProof,
} from "../../readings/index.ts";
import { dropCheck, isMeterCheck, measureOf } from "../../session/index.ts";
import { dayOf } from "../../sheet/index.ts";
import { Button, Tip } from "../app/controls/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { CheckForm } from "./check-form.tsx";
import styles from "./first-checks.module.css";
import { StatusShape } from "./status-shape.tsx";
import { unbroken } from "./unbroken.ts";

const TITLES: Readonly<Record<CheckName, string>> = {
  "battery-at-rest": "Battery at rest",
  "battery-under-load": "Battery under load",
  "meter-before": "Meter on a known source, before",
  "meter-after": "Meter on a known source, after",
  "leads-together": "Leads together",
};

/** What has to be known before any reading counts: battery, meter and leads. */
export function FirstChecks() {
  const job = useSelected((state) => state.job);
  const machineId = useSelected((state) => state.machine);
  const [open, setOpen] = useState(false);
  const machine = job.machines.find((one) => one.id === machineId);
  if (!machine) return null;
  const { systemVoltage } = job;
  const proof = meterProof(machine, systemVoltage);
  const warns = proof.state !== "proved" && machine.readings.length > 0;
  return (
    <details
      className={styles.checks}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h2>First checks</h2>
        {hasBad(machine, systemVoltage) && <StatusShape status="warning" />}
        <span>{standing(machine, systemVoltage)}</span>
      </summary>
      {warns && (
        <p className={styles.proof} role="status">
          <StatusShape status="warning" />
          <span>{proof.sentence}</span>
        </p>
      )}
      <ol className={styles.list}>
        {FIRST_CHECKS.map((check) => (
          <Check
            key={check}
            check={check}
            machine={machine}
            systemVoltage={systemVoltage}
            use={check === "battery-at-rest" ? batteryUse(job, machine.id) : null}
          />
        ))}
      </ol>
    </details>
  );
}

const latest = ({ firstChecks = [] }: Machine): readonly FirstCheck[] =>
  FIRST_CHECKS.flatMap((check) => lastCheck(firstChecks, check) ?? []);

const hasBad = (machine: Machine, systemVoltage: number): boolean =>
  latest(machine).some((one) => !judgeCheck(one, systemVoltage).good);

/** `2 of 5 good`, `none done yet`. */
function standing(machine: Machine, systemVoltage: number): string {
  const last = latest(machine);
  if (last.length === 0) return "none done yet";
  const good = last.filter((one) => judgeCheck(one, systemVoltage).good).length;
  return `${good} of ${FIRST_CHECKS.length} good`;
}

interface CheckProps {
  check: CheckName;
  machine: Machine;
  systemVoltage: number;
  /** What it is used for, a sentence; null when nothing needs saying. */
  use: string | null;
}

function Check({ check, machine, systemVoltage, use }: CheckProps) {
  const session = useSession();
  const [entering, setEntering] = useState(false);
  const kept = lastCheck(machine.firstChecks ?? [], check);
  const verdict = kept ? judgeCheck(kept, systemVoltage) : null;
  const title = TITLES[check];
  const remove = (id: string) =>
    session.edit(`Delete the check ${title.toLowerCase()}`, (draft) =>
      dropCheck(draft, machine.id, id),
    );
  const enter = (
    <Button onClick={() => setEntering(true)} aria-label={`Enter: ${title}`}>
      {kept ? "Do it again" : "Enter it"}
    </Button>
  );
  return (
    <li data-bad={verdict?.good === false}>
      <div className={styles.line}>
        <StatusShape status={verdict === null ? "unproven" : verdict.good ? "agrees" : "warning"} />
        <h3>{title}</h3>
        {kept && <span className={styles.value}>{shownValue(kept)}</span>}
        {!kept && !entering && enter}
      </div>
      {verdict && <p>{verdict.sentence}</p>}
      {use !== null && <p className={styles.when}>{use}</p>}
      {entering && (
        <CheckForm
          check={check}
          machine={machine.id}
          title={title}
          onDone={() => setEntering(false)}
        />
      )}
      {kept && !entering && (
        <span className={styles.acts}>
          <span className={styles.when}>{kept.at && whenInWords(kept.at)}</span>
          {enter}
          <Tip text="Delete it">
            <Button
              tone="quiet"
              icon={<Trash2 aria-hidden />}
              aria-label={`Delete: ${title}`}
              onClick={() => remove(kept.id)}
            />
          </Tip>
        </span>
      )}
    </li>
  );
}

/** `14 Nov, 08:12`, as on the clock of who measured. */
const whenInWords = (at: string): string =>
  unbroken([dayOf(at), /T(\d\d:\d\d)/.exec(at)?.[1]].filter(Boolean).join(", "));

/** `12.41 V at 5 °C`, `12.58 V for 12.60 V`. */
function shownValue({ check, value, known, celsius }: FirstCheck): string {
  const shown = formatQuantity(value, measureOf(check));
  if (isMeterCheck(check) && known !== undefined)
    return `${shown} for ${formatQuantity(known, "volts")}`;
  return celsius === undefined ? shown : `${shown} at ${celsius} °C`;
}
