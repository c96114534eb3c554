import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { isLookedAtAgain, type Severity } from "../../check/index.ts";
import type { Job } from "../../job/index.ts";
import {
  counterparts,
  doubtedPlaces,
  type FindingRow,
  findingRows,
  isFolded,
  type OrderedFinding,
  offeredFor,
} from "../../session/index.ts";
import { goTo } from "../app/go-to.ts";
import { useForm } from "../app/use-layout.ts";
import { useSelected, useSession, useShownAnalysis } from "../session-context.tsx";
import { FindingItem } from "./findings/finding-item.tsx";
import { FoldedItem } from "./findings/folded-findings.tsx";
import { SetAsideList } from "./findings/set-aside-list.tsx";
import styles from "./findings-panel.module.css";
import { StatusShape } from "./status-shape.tsx";
import { useGrowingList } from "./use-growing-list.ts";
import { useOrderedFindings } from "./use-ordered-findings.ts";

const SEVERITIES = ["contradiction", "warning", "note"] as const;
const PLURALS: Readonly<Record<Severity, string>> = {
  contradiction: "contradictions",
  warning: "warnings",
  note: "notes",
};

const isAside = ({ finding }: OrderedFinding) => finding.setAside !== undefined;

/** Everything worth telling, contradictions first; nothing changes places while one works. */
export function FindingsPanel() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const selection = useSelected((state) => state.selection);
  const { result: analysis, again } = useShownAnalysis();
  const onlyOne = useForm() === "phone";
  const findings = useOrderedFindings();
  const [only, setOnly] = useState<Severity | null>(null);
  const doubted = useMemo(() => doubtedPlaces(analysis.findings), [analysis]);
  const lit = useMemo(
    () => counterparts(job, analysis, selection).refs,
    [job, analysis, selection],
  );
  const list = useRef<HTMLOListElement>(null);
  const chief = selection[0];
  useEffect(() => {
    // Chosen elsewhere, what it says comes into view; chosen here, nothing moves under the finger.
    if (chief === undefined || list.current?.contains(document.activeElement)) return;
    const first = list.current?.querySelector("[data-lit=true]");
    first?.scrollIntoView?.({ block: "nearest" });
  }, [chief]);
  const counts = {
    contradiction: analysis.summary.contradictions,
    warning: analysis.summary.warnings,
    note: analysis.summary.notes,
  };
  // A filter for what is no longer there would hide all the rest.
  const filter = only !== null && counts[only] > 0 ? only : null;
  const aside = findings.filter(isAside);
  const shown = useMemo(
    () =>
      findings.filter(
        (one) => !isAside(one) && (filter === null || one.finding.severity === filter),
      ),
    [findings, filter],
  );
  const rows = useMemo(() => findingRows(shown), [shown]);
  const isLit = (row: FindingRow) =>
    isFolded(row) ? row.members.some(({ key }) => lit.has(key)) : lit.has(row.key);
  const grown = useGrowingList(rows, rows.findIndex(isLit) + 1);
  const onShow = useCallback((key: string) => session.show({ selection: [key] }), [session]);
  const onPath = useCallback(
    (key: string) => {
      if (onlyOne) session.show({ station: "diagram" });
      goTo(session, key);
    },
    [session, onlyOne],
  );
  const item = (one: OrderedFinding) => (
    <FindingItem
      key={one.key}
      ordered={one}
      chosen={selection[0] === one.key}
      lit={lit.has(one.key)}
      offers={offeredFor(one.finding, doubted)}
      again={isLookedAtAgain(one.finding, again)}
      onShow={onShow}
      // Where one thing shows at a time, the path is on a screen of its own.
      leads={onlyOne}
      onPath={onPath}
    />
  );
  return (
    <section className={styles.panel} aria-label="Findings" tabIndex={-1} data-keeps-focus>
      <header className={styles.head}>
        <h2>Findings</h2>
        <fieldset className={styles.filter} aria-label="Show only">
          {SEVERITIES.filter((severity) => counts[severity] > 0).map((severity) => (
            <button
              key={severity}
              type="button"
              aria-pressed={filter === severity}
              aria-label={`${counts[severity]} ${counts[severity] === 1 ? severity : PLURALS[severity]}`}
              onClick={() => setOnly(filter === severity ? null : severity)}
            >
              <StatusShape status={severity} />
              {counts[severity]}
            </button>
          ))}
        </fieldset>
      </header>
      {findings.length === 0 && <NothingFound job={job} />}
      <ol ref={list} className={styles.list}>
        {grown.shown.map((row) =>
          isFolded(row) ? (
            <FoldedItem key={row.key} folded={row} lit={isLit(row)}>
              {row.members.map(item)}
            </FoldedItem>
          ) : (
            item(row)
          ),
        )}
        {grown.isMore && <li ref={grown.end} aria-hidden />}
      </ol>
      {shown.length === 0 && aside.length > 0 && (
        <p className={styles.rest}>All that was found is set aside.</p>
      )}
      <SetAsideList findings={aside} lit={lit} />
    </section>
  );
}

/** No findings is no proof: says what was looked at, and what could not be. */
function NothingFound({ job }: { job: Job }) {
  const modules = job.diagram.parts.flatMap((part) => (part.kind === "module" ? [part] : []));
  const pins = modules.flatMap((module) => module.pins);
  const words = pins.filter((pin) => pin.printed).length;
  const readings = job.machines.reduce((sum, machine) => sum + machine.readings.length, 0);
  const looked = [
    job.diagram.wires.length > 0 &&
      "the circuit as traced: shorts, missing feeds and returns, loose ends",
    words > 0 && `${words} printed words against the circuit`,
    job.links.length > 0 && `${job.links.length} matches of pins and cavities`,
    readings > 0 && `${readings} readings`,
  ].filter((one) => one !== false);
  const lacking = [
    job.diagram.wires.length === 0 && "no wires are traced yet",
    modules.length === 0 && "no module is placed yet, so there are no pins to judge",
    modules.length > 0 && words === 0 && "no words are typed beside the module’s pins",
    job.plugs.length === 0 && "no plug is drawn",
    job.plugs.length > 0 && job.links.length === 0 && "no pin is matched to a cavity",
    readings === 0 && "nothing is measured yet: the meter has not had its say",
  ].filter((one) => one !== false);
  return (
    <div className={styles.nothing}>
      <p>Nothing found so far.</p>
      {looked.length > 0 && (
        <>
          <p>Looked at:</p>
          <ul>
            {looked.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
      {lacking.length > 0 && (
        <>
          <p>Not yet:</p>
          <ul>
            {lacking.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
