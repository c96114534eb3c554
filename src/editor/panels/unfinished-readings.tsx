import { useEffect, useState } from "react";
import { wordsForProbe } from "../../readings/index.ts";
import { Button } from "../app/controls/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./reading-pad.module.css";
import { type BegunReading, dropAside, goOnWith, putAside, readUnfinished } from "./unfinished.ts";

/** Readings begun and left: nothing typed is lost until it is kept or discarded. */
export function UnfinishedReadings() {
  const session = useSession();
  const key = useSelected((state) => state.key);
  const job = useSelected((state) => state.job);
  const [aside, setAside] = useState<readonly BegunReading[]>([]);
  useEffect(() => {
    // What was on the pad when the tab closed is put aside with the others.
    const { live } = readUnfinished(key);
    if (live) putAside(key, live);
    setAside(readUnfinished(key).aside);
  }, [key]);
  if (aside.length === 0) return null;
  const machineOf = ({ machine }: BegunReading) =>
    machine === undefined ? undefined : job.machines.find((one) => one.id === machine);
  const discard = (place: number) => {
    dropAside(key, place);
    setAside(readUnfinished(key).aside);
  };
  return (
    <section className={styles.unfinished} aria-label="Readings begun and not kept">
      <h3>Begun and not kept</h3>
      <ul>
        {aside.map((draft, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two of them may be alike in everything
          <li key={place}>
            <span>
              {draft.value || "no value"} {draft.quantity} at{" "}
              {draft.red === null ? "no place yet" : wordsForProbe(job, draft.red)}
              {draft.machine !== undefined &&
                `, on ${machineOf(draft)?.name ?? "a machine that was taken out of the job"}`}
            </span>
            {(draft.machine === undefined || machineOf(draft)) && (
              <Button
                onClick={() => {
                  dropAside(key, place);
                  goOnWith(session, draft);
                }}
              >
                Go on
              </Button>
            )}
            <Button tone="quiet" onClick={() => discard(place)}>
              Discard
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
