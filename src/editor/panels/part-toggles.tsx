import { useState } from "react";
import type { Id, Part } from "../../job/index.ts";
import { Button } from "../app/controls/index.ts";
import { PartSearch } from "./part-search.tsx";
import styles from "./reading-pad.module.css";

interface PartTogglesProps {
  label: string;
  parts: readonly Part[];
  chosen: readonly Id[];
  onToggle: (id: Id) => void;
}

/** More parts than these are not all laid out: those chosen are, and one is found by its name. */
const MOST_SHOWN = 24;

const nameOf = ({ id, label }: Part): string => (label ? `${id} ${label}` : id);

/** Parts of which each is chosen or not, each as large as a thumb. */
export function PartToggles({ label, parts, chosen, onToggle }: PartTogglesProps) {
  const [words, setWords] = useState("");
  const searches = parts.length > MOST_SHOWN;
  const wanted = words.trim().toLowerCase();
  const found = !searches
    ? parts
    : wanted === ""
      ? []
      : parts.filter((part) => nameOf(part).toLowerCase().includes(wanted));
  const hits = found.slice(0, MOST_SHOWN);
  const shown = searches
    ? [...parts.filter(({ id }) => chosen.includes(id)), ...hits].filter(
        (part, index, all) => all.indexOf(part) === index,
      )
    : hits;
  return (
    <fieldset className={styles.toggles}>
      <legend>{label}</legend>
      {searches && (
        <div className={styles.note}>
          <PartSearch
            label={`Find one of ${parts.length} by its name`}
            words={words}
            onWords={setWords}
          />
        </div>
      )}
      <div>
        {shown.map((part) => (
          <Button
            key={part.id}
            aria-pressed={chosen.includes(part.id)}
            onClick={() => onToggle(part.id)}
          >
            {nameOf(part)}
          </Button>
        ))}
      </div>
      {found.length > hits.length && <p>{found.length - hits.length} more: write more of it.</p>}
    </fieldset>
  );
}
