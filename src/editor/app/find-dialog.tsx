import { useEffect, useId, useMemo, useState } from "react";
import {
  type Found,
  type FoundKind,
  readySearch,
  type StationId,
  search,
} from "../../session/index.ts";
import { useAnalysis, useSelected, useSession } from "../session-context.tsx";
import { Modal } from "./controls/index.ts";
import styles from "./find-dialog.module.css";
import { goTo } from "./go-to.ts";
import { useForm } from "./use-layout.ts";

const KIND_WORDS: Readonly<Record<FoundKind, string>> = {
  part: "part",
  pin: "pin",
  wire: "wire",
  cavity: "cavity",
  reading: "reading",
  finding: "finding",
};

const SHOWN_AT: Readonly<Record<FoundKind, StationId>> = {
  part: "diagram",
  pin: "diagram",
  wire: "diagram",
  cavity: "plug",
  reading: "prove",
  finding: "check",
};

/** Finds any name, printed word, number or colour; arrows and Enter choose. */
export function FindDialog() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const analysis = useAnalysis();
  const form = useForm();
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const listId = useId();
  const hits = useMemo(() => search(job, analysis, query), [job, analysis, query]);
  useEffect(() => {
    const steps = readySearch(job, analysis.machine);
    let timer = setTimeout(function step() {
      if (!steps.next().done) timer = setTimeout(step);
    });
    return () => clearTimeout(timer);
  }, [job, analysis.machine]);
  const chosen = hits[Math.min(at, hits.length - 1)];

  const move = (by: number) => {
    const next = Math.min(hits.length - 1, Math.max(0, at + by));
    setAt(next);
    document.getElementById(`${listId}-${next}`)?.scrollIntoView({ block: "nearest" });
  };

  const choose = (hit: Found) => {
    goTo(session, hit.ref);
    // Where one thing shows at a time, what was found must be the one.
    if (form === "phone") session.show({ station: SHOWN_AT[hit.kind] });
  };

  return (
    <Modal title="Find" place="top" onClose={() => session.show({ dialog: null })}>
      <input
        className={styles.query}
        data-first
        type="search"
        role="combobox"
        aria-label="Name, word, number or colour"
        aria-expanded={hits.length > 0}
        aria-controls={listId}
        aria-activedescendant={chosen ? `${listId}-${hits.indexOf(chosen)}` : undefined}
        placeholder="F3, GND, 1412, brown…"
        value={query}
        onChange={(event) => {
          setQuery(event.target.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (event.key === "ArrowDown") move(1);
          else if (event.key === "ArrowUp") move(-1);
          else if (event.key === "Enter" && chosen) choose(chosen);
          else return;
          event.preventDefault();
        }}
      />
      <div className={styles.hits} id={listId} role="listbox" aria-label="Found">
        {hits.map((hit, index) => (
          <button
            key={hit.ref}
            id={`${listId}-${index}`}
            type="button"
            role="option"
            tabIndex={-1}
            aria-selected={hit === chosen}
            className={styles.hit}
            onPointerMove={() => setAt(index)}
            onClick={() => choose(hit)}
          >
            <span className={styles.kind}>{KIND_WORDS[hit.kind]}</span>
            <span className={styles.title}>{hit.title}</span>
            <span className={styles.detail}>{hit.detail}</span>
          </button>
        ))}
      </div>
      <p className={styles.none} role="status">
        {query.trim() !== "" && hits.length === 0
          ? `Nothing here is called “${query.trim()}”.`
          : ""}
      </p>
    </Modal>
  );
}
