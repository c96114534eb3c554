import { useMemo } from "react";
import { cavityRef, type Job, type PinRef, pinRef } from "../../job/index.ts";
import { drawnOf, link, type PinRow, tiedTo, unlink } from "../../session/index.ts";
import { type Choice, ChoiceList } from "../panels/choice-list.tsx";
import { ChoicePopover } from "../panels/choice-popover.tsx";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./pin-table.module.css";

/** What is matched, as far as the picker shows it. */
type PickedRow = Pick<PinRow, "cavity" | "ref" | "pins" | "mark" | "state">;

/** Which pin of the diagram belongs in this cavity; for a pin without one, which cavity it has. */
export function PinPicker({ row }: { row: PickedRow }) {
  const text = row.pins.join(", ");
  if (text === "" && row.state === "blocked") return <span className={styles.soft}>–</span>;
  return (
    <ChoicePopover
      name={row.cavity ? `Pin for cavity ${row.mark}` : `Cavity for pin ${row.ref}`}
      button={
        <button type="button" className={styles.pin} aria-label={labelOf(row)}>
          {text || <span className={styles.soft}>match…</span>}
        </button>
      }
    >
      {(close) => <PickList row={row} onDone={close} />}
    </ChoicePopover>
  );
}

const labelOf = (row: PickedRow) =>
  row.cavity === null
    ? `Pin ${row.ref}: match it to a cavity`
    : `Pin in cavity ${row.mark}: ${row.pins.join(", ") || "none"}. Change it`;

function PickList({ row, onDone }: { row: PickedRow; onDone: () => void }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const choices = useMemo(
    () => (row.cavity === null ? cavityChoices(job) : pinChoices(job, row)),
    [job, row],
  );
  const choose = (ref: string) => {
    const [pin, cavity] = row.cavity === null ? [row.ref, ref] : [ref, row.cavity];
    session.edit(`Tie ${pin} to ${cavity}`, (draft) => link(draft, pin, cavity));
    session.show({ selection: [cavity] });
    onDone();
  };
  const untie = () => {
    session.edit(`Untie ${row.ref}`, (draft) => unlink(draft, row.ref));
    onDone();
  };
  return (
    <>
      <ChoiceList
        choices={choices}
        name={row.cavity === null ? "Cavities" : "Pins"}
        search="Search"
        placeholder={row.cavity === null ? "Cavity" : "Pin or word"}
        none="Nothing of that name."
        onChoose={choose}
      />
      {row.cavity !== null && row.pins.length > 0 && (
        <button type="button" className={styles.untie} onClick={untie}>
          Untie {row.pins.join(", ")}
        </button>
      )}
    </>
  );
}

/** The one that is tied now, then untied ones: they are what is looked for. */
const rankOf = ({ chosen, under }: Choice) => (chosen ? 0 : under === undefined ? 1 : 2);
const untiedFirst = (a: Choice, b: Choice) => rankOf(a) - rankOf(b);

function pinChoices(job: Job, { cavity, pins }: PickedRow): Choice[] {
  const tied = tiedTo(job);
  return job.diagram.parts
    .flatMap((part) =>
      part.kind !== "module"
        ? []
        : part.pins.map((pin): Choice => {
            const ref: PinRef = pinRef(part.id, pin.id);
            const text = pin.printed ? `${ref}  ${pin.printed}` : ref;
            const taken = tied.get(ref);
            return {
              id: ref,
              text,
              chosen: pins.includes(ref),
              ...(taken && taken !== cavity ? { under: `now in ${taken}` } : {}),
            };
          }),
    )
    .sort(untiedFirst);
}

function cavityChoices(job: Job): Choice[] {
  const tied = tiedTo(job);
  return job.plugs
    .flatMap((plug) =>
      plug.cavities
        .filter((cavity) => !cavity.blocked)
        .map((cavity): Choice => {
          const ref = cavityRef(plug.id, cavity.mark);
          const taken = tied.get(ref);
          return {
            id: ref,
            text: ref,
            name: cavity.mark,
            ...(taken ? { under: `now pin ${taken}` } : {}),
          };
        }),
    )
    .sort(untiedFirst);
}
