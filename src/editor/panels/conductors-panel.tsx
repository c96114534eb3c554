import type { Conductors } from "../../job/index.ts";
import { setConductors } from "../../session/index.ts";
import { INSULATIONS } from "../../standards/index.ts";
import { NumberField } from "../boards/diagram/details/number-field.tsx";
import { Choice, type ChoiceOption } from "../boards/plug/fields.tsx";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./conductors-panel.module.css";

const NOT_SAID: ChoiceOption<string> = { value: "", text: "not said" };

const INSULATION = [
  NOT_SAID,
  ...INSULATIONS.map((celsius) => ({ value: String(celsius), text: `stands ${celsius} °C` })),
];

const ENGINE = [
  NOT_SAID,
  { value: "no", text: "no" },
  { value: "yes", text: "yes, note 1 counts" },
];

const GAUGES = [
  NOT_SAID,
  { value: "sae", text: "SAE metric sizes" },
  { value: "european", text: "European drawings" },
];

/** What the job's wires and fuses are held against: said by the user, or not held against anything. */
export function ConductorsPanel() {
  const session = useSession();
  const conductors = useSelected((state) => state.job.conductors) ?? {};
  const { insulation, engineSpace, bundled, gauges } = conductors;
  const say = (
    label: string,
    change: Partial<{ [K in keyof Conductors]: Conductors[K] | undefined }>,
  ) => session.edit(label, (draft) => setConductors(draft, change));
  return (
    <details className={styles.panel}>
      <summary>
        Wires and fuses
        <span className={styles.now}>
          {insulation === undefined ? "no table chosen" : `${insulation} °C insulation`}
        </span>
      </summary>
      <div className={styles.grid}>
        <Choice
          label="Insulation"
          value={insulation === undefined ? "" : String(insulation)}
          options={INSULATION}
          onChange={(value) =>
            say("Say what the insulation stands", {
              insulation: INSULATIONS.find((celsius) => String(celsius) === value),
            })
          }
        />
        <Choice
          label="Beside the engine"
          value={engineSpace === undefined ? "" : engineSpace ? "yes" : "no"}
          options={ENGINE}
          onChange={(value) =>
            say("Say where the wires lie", {
              engineSpace: value === "" ? undefined : value === "yes",
            })
          }
        />
        <NumberField
          label="Live wires in one bundle"
          unit=""
          whole
          value={bundled}
          placeholder="not said"
          onChange={(count) => say("Say how many wires lie together", { bundled: count })}
        />
        <Choice
          label="AWG beside mm²"
          value={gauges ?? ""}
          options={GAUGES}
          onChange={(value) =>
            say("Say how gauges and mm² go together", {
              gauges: value === "sae" || value === "european" ? value : undefined,
            })
          }
        />
      </div>
      <p className={styles.source}>
        Fuses are held against 33 CFR 183.425 table 5 (copper, 30 °C around the wire), at 150 % of
        it as in 33 CFR 183.455. It is a rule for boats, and published for anybody to check: the
        machine’s own instructions come first.
      </p>
    </details>
  );
}
