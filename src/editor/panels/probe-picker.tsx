import { ListFilter } from "lucide-react";
import { useMemo } from "react";
import { pinsOf } from "../../circuit/index.ts";
import { cavityRef, FIXED_PROBES, type Job, type Probe, pinRef } from "../../job/index.ts";
import { wordsForProbe } from "../../readings/index.ts";
import { drawnJob } from "../../session/index.ts";
import { Button } from "../app/controls/index.ts";
import { useSelected } from "../session-context.tsx";
import { type Choice, ChoiceList } from "./choice-list.tsx";
import { ChoicePopover } from "./choice-popover.tsx";

interface ProbePickerProps {
  /** `red` or `black`. */
  lead: "red" | "black";
  job: Job;
  onPick: (probe: Probe) => void;
}

/** Every place that a probe can touch, by name: the way in without a board in sight. */
export function ProbePicker({ lead, job, onPick }: ProbePickerProps) {
  return (
    <ChoicePopover
      name="Places"
      align="end"
      button={
        <Button
          icon={<ListFilter aria-hidden />}
          aria-label={`Pick the ${lead} lead’s place from a list`}
        />
      }
    >
      {(close) => (
        <PlaceList
          job={job}
          onPick={(probe) => {
            onPick(probe);
            close();
          }}
        />
      )}
    </ChoicePopover>
  );
}

function PlaceList({ job, onPick }: { job: Job; onPick: (probe: Probe) => void }) {
  const machine = useSelected((state) => state.machine);
  const places = useMemo(() => placesOf(drawnJob(job, machine)), [job, machine]);
  return (
    <ChoiceList
      choices={places}
      name="Places"
      search="Search for a place"
      placeholder="Cavity, pin, part"
      none="No place of that name."
      onChoose={onPick}
    />
  );
}

function placesOf(job: Job): Choice[] {
  const cavities = job.plugs.flatMap((plug) =>
    plug.cavities
      .filter((cavity) => !cavity.blocked)
      .map((cavity) => cavityRef(plug.id, cavity.mark)),
  );
  const pins = job.diagram.parts.flatMap((part) =>
    pinsOf(part).map((pin) => ({
      id: pinRef(part.id, pin.id),
      text: `${part.id} pin ${pin.id}${part.label ? `, ${part.label}` : ""}`,
    })),
  );
  const named = [...FIXED_PROBES, ...cavities].map((probe) => ({
    id: probe,
    text: wordsForProbe(job, probe),
  }));
  const seen = new Set<Probe>();
  return [...named, ...pins].filter(({ id }) => {
    const isNew = !seen.has(id);
    seen.add(id);
    return isNew;
  });
}
