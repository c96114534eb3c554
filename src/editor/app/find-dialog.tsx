import { useId, useMemo, useState } from "react";
import { type FoundKind, search } from "../../session/index.ts";
import { useAnalysis, useSelected, useSession } from "../session-context.tsx";
import { Modal } from "./controls/index.ts";
import styles from "./find-dialog.module.css";
import { goTo } from "./go-to.ts";

const KIND_WORDS: Readonly<Record<FoundKind, string>> = {
  part: "part",
  pin: "pin",
  wire: "wire",
  cavity: "cavity",
  reading: "reading",
  finding: "finding",
};

/** Finds any name, printed word, number or colour; arrows and Enter choose. */
export function FindDialog() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const analysis = useAnalysis();
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const listId = useId();
  const hits = useMemo(() => search(job, analysis, query), [job, analysis, query]);
  const chosen = hits[Math.min(at, hits.length - 1)];

  const move = (by: number) => {
    const next = Math.min(hits.length - 1, Math.max(0, at + by));
    setAt(next);
    document.getElementById(`${listId}-${next}`)?.scrollIntoView({ block: "nearest" });
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
          else if (event.key === "Enter" && chosen) goTo(session, chosen.ref);
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
            onClick={() => goTo(session, hit.ref)}
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
