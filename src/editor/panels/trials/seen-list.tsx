import { useMemo, useState } from "react";
import type { Part } from "../../../job/index.ts";
import type { TrialOutcome } from "../../../readings/index.ts";
import {
  partInWords,
  type Seen,
  seenWords,
  type TrialDraft,
  toLookAt,
  withSeen,
} from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { PartSearch } from "../part-search.tsx";
import { Segments } from "../segments.tsx";
import styles from "./trials.module.css";

interface SeenListProps {
  draft: TrialDraft;
  outcome: TrialOutcome | null;
}

/** Loads that are listed at a time, at most: a large drawing has thousands. */
const MOST_SHOWN = 12;

/** What was seen of each load and relay: first those that the trial as drawn moves. */
export function SeenList({ draft, outcome }: SeenListProps) {
  const job = useSelected((state) => state.job);
  const { first, others } = useMemo(
    () => toLookAt(job, draft.machine, outcome),
    [job, draft.machine, outcome],
  );
  const shown = first.slice(0, MOST_SHOWN);
  return (
    <section className={styles.seen} aria-label="What was seen">
      <h3>What was seen</h3>
      {shown.map((part) => (
        <SeenChoice key={part.id} part={part} draft={draft} />
      ))}
      <Others parts={[...first.slice(MOST_SHOWN), ...others]} draft={draft} />
    </section>
  );
}

/** All that one would not look at first; so many that one is found by its name. */
function Others({ parts, draft }: { parts: readonly Part[]; draft: TrialDraft }) {
  const [words, setWords] = useState("");
  const entered = parts.filter(({ id }) => draft.saw[id] !== undefined);
  const [open, setOpen] = useState(entered.length > 0);
  if (parts.length === 0) return null;
  const searches = parts.length > MOST_SHOWN;
  const wanted = words.trim().toLowerCase();
  const found = parts.filter((part) => partInWords(part.id, part).toLowerCase().includes(wanted));
  const hits = searches && wanted === "" ? [] : found.slice(0, MOST_SHOWN);
  const listed = searches ? [...entered, ...hits.filter((part) => !entered.includes(part))] : found;
  return (
    <details
      className={styles.fold}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {parts.length === 1 ? "1 other load or relay" : `${parts.length} other loads and relays`}
      </summary>
      {open && (
        <div className={styles.seen}>
          {searches && (
            <div className={styles.search}>
              <PartSearch label="Find one by its name" words={words} onWords={setWords} />
              {found.length === 0 && <p>Nothing of that name.</p>}
              {found.length > MOST_SHOWN && wanted !== "" && (
                <p>{found.length - MOST_SHOWN} more: write more of the name.</p>
              )}
            </div>
          )}
          {listed.map((part) => (
            <SeenChoice key={part.id} part={part} draft={draft} />
          ))}
        </div>
      )}
    </details>
  );
}

function SeenChoice({ part, draft }: { part: Part; draft: TrialDraft }) {
  const session = useSession();
  const [on, off] = seenWords(part);
  const options = [
    { value: "on", text: on },
    { value: "off", text: off },
    { value: "none", text: "not looked at" },
  ] as const;
  const enter = (value: Seen | "none") =>
    session.show({ trial: withSeen(draft, part.id, value === "none" ? null : value) });
  return (
    <Segments
      label={partInWords(part.id, part)}
      value={draft.saw[part.id] ?? "none"}
      rest="none"
      options={options}
      onChange={enter}
    />
  );
}
