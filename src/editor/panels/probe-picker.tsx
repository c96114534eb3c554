import { ListFilter } from "lucide-react";
import { Popover } from "radix-ui";
import { useMemo, useState } from "react";
import { pinsOf } from "../../circuit/index.ts";
import { cavityRef, FIXED_PROBES, type Job, type Probe, pinRef } from "../../job/index.ts";
import { wordsForProbe } from "../../readings/index.ts";
import { drawnJob } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { useSelected } from "../session-context.tsx";
import styles from "./probe-picker.module.css";

interface Place {
  readonly probe: Probe;
  readonly text: string;
}

interface ProbePickerProps {
  /** `red` or `black`. */
  lead: "red" | "black";
  job: Job;
  onPick: (probe: Probe) => void;
}

/** Every place that a probe can touch, by name: the way in without a board in sight. */
export function ProbePicker({ lead, job, onPick }: ProbePickerProps) {
  const [open, setOpen] = useState(false);
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <Button
          icon={<ListFilter aria-hidden />}
          aria-label={`Pick the ${lead} lead’s place from a list`}
        />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.popover} align="end" collisionPadding={8}>
          <PlaceList
            job={job}
            onPick={(probe) => {
              onPick(probe);
              setOpen(false);
            }}
          />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}

/** A long list is no help on a phone: what is sought narrows it. */
const MOST_SHOWN = 60;

function PlaceList({ job, onPick }: { job: Job; onPick: (probe: Probe) => void }) {
  const machine = useSelected((state) => state.machine);
  const [sought, setSought] = useState("");
  const places = useMemo(() => placesOf(drawnJob(job, machine)), [job, machine]);
  const wanted = sought.trim().toLowerCase();
  const found = places.filter(({ text, probe }) =>
    `${text} ${probe}`.toLowerCase().includes(wanted),
  );
  return (
    <div className={styles.list}>
      <input
        type="search"
        aria-label="Search for a place"
        placeholder="Cavity, pin, part"
        value={sought}
        onChange={(event) => setSought(event.target.value)}
        onKeyDown={(event) => {
          const first = found[0];
          if (event.key !== "Enter" || !first) return;
          // The same press must not go on to the pad, and keep the reading.
          event.preventDefault();
          onPick(first.probe);
        }}
      />
      <ul aria-label="Places">
        {found.slice(0, MOST_SHOWN).map(({ probe, text }) => (
          <li key={probe}>
            <button type="button" onClick={() => onPick(probe)}>
              {text}
            </button>
          </li>
        ))}
        {found.length === 0 && <li className={styles.none}>No place of that name.</li>}
        {found.length > MOST_SHOWN && (
          <li className={styles.none}>{found.length - MOST_SHOWN} more: type to narrow it down.</li>
        )}
      </ul>
    </div>
  );
}

function placesOf(job: Job): Place[] {
  const cavities = job.plugs.flatMap((plug) =>
    plug.cavities
      .filter((cavity) => !cavity.blocked)
      .map((cavity) => cavityRef(plug.id, cavity.mark)),
  );
  const pins = job.diagram.parts.flatMap((part) =>
    pinsOf(part).map((pin) => ({
      probe: pinRef(part.id, pin.id),
      text: `${part.id} pin ${pin.id}${part.label ? `, ${part.label}` : ""}`,
    })),
  );
  const named = [...FIXED_PROBES, ...cavities].map((probe) => ({
    probe,
    text: wordsForProbe(job, probe),
  }));
  const seen = new Set<Probe>();
  return [...named, ...pins].filter(({ probe }) => {
    const isNew = !seen.has(probe);
    seen.add(probe);
    return isNew;
  });
}
