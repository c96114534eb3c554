import { useMemo, useState } from "react";
import { addTo } from "../../../base/index.ts";
import { type Id, type Job, type Plug, splitRef } from "../../../job/index.ts";
import { plugTitle } from "../../../plug/index.ts";
import { leftOver, markRuns } from "../../../session/index.ts";
import { useGrowingList } from "../../panels/index.ts";
import styles from "./match-panel.module.css";

interface LeftOverProps {
  job: Job;
  /** The plug at hand. */
  plug: Id | null;
  onPlug: (plug: Id) => void;
}

interface Left {
  readonly plug: Plug;
  readonly marks: readonly string[];
}

/** Cavities with no pin: those of the plug at hand in one line, and those of the others on demand. */
export function LeftOver({ job, plug, onPlug }: LeftOverProps) {
  const left = useMemo(() => leftByPlug(job), [job]);
  if (left.length === 0) return null;
  const here = left.find((one) => one.plug.id === plug);
  const others = left.filter((one) => one !== here);
  return (
    <div className={styles.left}>
      <strong>Left over on the plug</strong>
      {here && (
        <p>
          {job.plugs.length > 1 ? `${plugTitle(here.plug)}, ` : ""}
          {wordsFor(here.marks)}
        </p>
      )}
      {others.length > 0 && <OtherPlugs others={others} onPlug={onPlug} />}
    </div>
  );
}

function OtherPlugs({ others, onPlug }: { others: readonly Left[]; onPlug: (plug: Id) => void }) {
  const [open, setOpen] = useState(false);
  const { shown, isMore, end } = useGrowingList(others, 0);
  const cavities = others.reduce((sum, { marks }) => sum + marks.length, 0);
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {cavities} {cavities === 1 ? "cavity" : "cavities"} on{" "}
        {others.length === 1 ? "another plug" : `${others.length} other plugs`}
      </summary>
      {open && (
        <ul className={styles.others}>
          {shown.map(({ plug, marks }) => (
            <li key={plug.id}>
              <button type="button" onClick={() => onPlug(plug.id)}>
                {plugTitle(plug)}, {wordsFor(marks)}
              </button>
            </li>
          ))}
          {isMore && <li ref={end} aria-hidden />}
        </ul>
      )}
    </details>
  );
}

const wordsFor = (marks: readonly string[]) =>
  `${marks.length === 1 ? "cavity" : `${marks.length} cavities:`} ${markRuns(marks)}`;

function leftByPlug(job: Job): readonly Left[] {
  const marks = new Map<Id, string[]>();
  for (const ref of leftOver(job).cavities) {
    const { owner, name } = splitRef(ref);
    addTo(marks, owner, name);
  }
  return job.plugs.flatMap((plug) => {
    const own = marks.get(plug.id);
    return own ? [{ plug, marks: own }] : [];
  });
}
