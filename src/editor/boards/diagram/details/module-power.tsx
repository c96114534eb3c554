import { Plus, X } from "lucide-react";
import type { Job, PartOf } from "../../../../job/index.ts";
import { addSource, removeSource, setLeastVolts, setSource } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import styles from "./details.module.css";
import { NumberField } from "./number-field.tsx";
import { PinPair } from "./pin-pair.tsx";

type Module = PartOf<"module">;

/** Share of nominal volts that the program reckons with where nobody has said. */
const USUAL_LEAST = 0.6;

/** What the module needs before it works at all. Which pins carry it is said in the table of pins. */
export function ModulePower({ part }: { part: Module }) {
  const session = useSession();
  const voltage = useSelected((state) => state.job.systemVoltage);
  const { id, power } = part;
  const lacks = [!power?.supply.length && "feed", !power?.ground.length && "ground"].filter(
    Boolean,
  );
  return (
    <>
      <h4>What it works on</h4>
      <p className={styles.hint}>
        {lacks.length > 0
          ? `Set the ${lacks.join(" and the ")} in the table above: without both nobody can say whether it works.`
          : `Fed by ${power?.supply.join(" or ")}, grounded by ${power?.ground.join(" or ")}.`}
      </p>
      <NumberField
        label="Works from"
        unit="V"
        zero
        value={power?.minVolts}
        placeholder={String(Math.round(voltage * USUAL_LEAST * 10) / 10)}
        onChange={(volts) =>
          session.edit(`Set what ${id} works from`, (draft) => setLeastVolts(draft, id, volts))
        }
      />
    </>
  );
}

/** Sensor supplies and pull-ups that the module gives out. */
export function ModuleSources({ part }: { part: Module }) {
  const session = useSession();
  const { id, pins, sources = [] } = part;
  const edit = (change: (draft: Job) => void) => session.edit(`Set what ${id} gives out`, change);
  return (
    <>
      <h4>What it gives out</h4>
      <p className={styles.hint}>A sensor supply or a pull-up, live while the module is powered.</p>
      {sources.map((source, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a source is known by its place alone
        <div key={index} className={styles.source}>
          <PinPair
            pins={pins}
            between={source.between}
            labels={["From", "To"]}
            onChange={([plus, minus]) =>
              edit((draft) => setSource(draft, id, index, { plus, minus }))
            }
          />
          <NumberField
            label="Volts"
            unit="V"
            value={source.volts}
            onChange={(volts) => edit((draft) => setSource(draft, id, index, { volts }))}
          />
          <NumberField
            label="Behind"
            unit="Ω"
            zero
            value={source.ohms}
            onChange={(ohms) => edit((draft) => setSource(draft, id, index, { ohms }))}
          />
          <Button
            tone="quiet"
            icon={<X aria-hidden />}
            aria-label={`Take out source ${index + 1}`}
            onClick={() => edit((draft) => removeSource(draft, id, index))}
          />
        </div>
      ))}
      <Button
        icon={<Plus aria-hidden />}
        disabled={pins.length < 2}
        onClick={() => edit((draft) => addSource(draft, id))}
      >
        Add a source
      </Button>
    </>
  );
}
