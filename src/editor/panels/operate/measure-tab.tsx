import { wordsForProbe } from "../../../readings/index.ts";
import { askLead, placeLead, readoutOf, voltsWords } from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { ProbePicker } from "../probe-picker.tsx";
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
  const job = useSelected((state) => state.job);
  const leads = useSelected((state) => state.operate.leads);
  const { red, black, asks, volts } = leads;
  return (
    <section className={styles.leads} aria-label="Two leads">
      <h3>Between two leads</h3>
      {(["red", "black"] as const).map((lead) => {
        const probe = leads[lead];
        const place = probe === null ? "nowhere yet" : wordsForProbe(job, probe);
        return (
          <div key={lead} className={styles.lead} data-lead={lead}>
            <button
              type="button"
              className={styles.probe}
              aria-pressed={asks === lead}
              aria-label={`${lead} lead: ${asks === lead ? "tap its place" : place}`}
              onClick={() => askLead(session, asks === lead ? null : lead)}
            >
              <span className={styles.tip} aria-hidden="true" />
              <span>
                <span className={styles.leadName}>{lead} lead</span>
                {asks === lead ? "tap its place on a board" : place}
              </span>
            </button>
            <ProbePicker
              lead={lead}
              job={job}
              onPick={(picked) => placeLead(session, lead, picked)}
            />
          </div>
        );
      })}
      <output className={styles.volts} aria-label="Volts between the leads">
        {red === null || black === null
          ? "Place both leads"
          : volts === undefined
            ? "…"
            : volts === null
              ? "Nothing ties the two together: a meter may show a ghost voltage"
              : voltsWords(volts)}
      </output>
    </section>
  );
}
