import { askLead, leadsWords, placeLead, readoutOf } from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { LeadField } from "../lead-field.tsx";
import { LineWord } from "./line-mark.tsx";
import styles from "./measure.module.css";

/** What is chosen, in volts and amps, and the volts between two leads. */
export function MeasureTab() {
  return (
    <>
      <Chosen />
      <Leads />
    </>
  );
}

function Chosen() {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const live = useSelected((state) => state.operate.live);
  const ref = useSelected((state) => state.selection[0]);
  const readout = live && ref !== undefined ? readoutOf(job, machine, live, ref) : null;
  if (!readout) {
    return (
      <p className={styles.hint}>
        Touch a wire, a pin, a part or a cavity to read its volts against chassis and its current.
      </p>
    );
  }
  return (
    <section className={styles.readout} aria-label="What is chosen">
      <h3>{readout.title}</h3>
      {readout.line && <LineWord state={readout.line} />}
      {readout.says.map((one) => (
        <p key={one}>{one}</p>
      ))}
    </section>
  );
}

function Leads() {
  const session = useSession();
  const leads = useSelected((state) => state.operate.leads);
  const job = useSelected((state) => state.job);
  const live = useSelected((state) => state.operate.live);
  const { asks } = leads;
  return (
    <section className={styles.leads} aria-label="Two leads">
      <h3>Between two leads</h3>
      {(["red", "black"] as const).map((lead) => (
        <LeadField
          key={lead}
          lead={lead}
          probe={leads[lead]}
          asking={asks === lead}
          onAsk={() => askLead(session, asks === lead ? null : lead)}
          onPick={(picked) => placeLead(session, lead, picked)}
        />
      ))}
      <output className={styles.volts} aria-label="Volts between the leads">
        {leadsWords(job, live, leads)}
      </output>
    </section>
  );
}
