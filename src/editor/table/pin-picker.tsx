import { Popover } from "radix-ui";
import { useMemo, useState } from "react";
import { type Job, type PinRef, pinRef } from "../../job/index.ts";
import { drawnOf, link, type PinRow, unlink } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./pin-table.module.css";

/** What is matched, as far as the picker shows it. */
type PickedRow = Pick<PinRow, "cavity" | "ref" | "pins" | "mark" | "state">;

/** A long list is slow to come and no help: what is sought narrows it. */
const MOST_SHOWN = 60;

/** Which pin of the diagram belongs in this cavity; for a pin without one, which cavity it has. */
export function PinPicker({ row }: { row: PickedRow }) {
  const [open, setOpen] = useState(false);
  const text = row.pins.join(", ");
  if (text === "" && row.state === "blocked") return <span className={styles.soft}>–</span>;
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger className={styles.pin} aria-label={labelOf(row)}>
        {text || <span className={styles.soft}>match…</span>}
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          data-portal
          className={styles.popover}
          align="start"
          collisionPadding={8}
          aria-label={row.cavity ? `Pin for cavity ${row.mark}` : `Cavity for pin ${row.ref}`}
        >
          <PickList row={row} onDone={() => setOpen(false)} />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}

const labelOf = (row: PickedRow) =>
  row.cavity === null
    ? `Pin ${row.ref}: match it to a cavity`
    : `Pin in cavity ${row.mark}: ${row.pins.join(", ") || "none"}. Change it`;

interface Choice {
  readonly ref: string;
  readonly text: string;
  /** What it is tied to already. */
  readonly taken: string;
}

function PickList({ row, onDone }: { row: PickedRow; onDone: () => void }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const [sought, setSought] = useState("");
  const choices = useMemo(
    () => (row.cavity === null ? cavityChoices(job) : pinChoices(job)),
    [job, row.cavity],
  );
  const wanted = sought.trim().toLowerCase();
  const found = choices.filter(({ text }) => text.toLowerCase().includes(wanted));
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
    <div className={styles.pick}>
      <input
        type="search"
        aria-label="Search"
        placeholder={row.cavity === null ? "Cavity" : "Pin or word"}
        value={sought}
        onChange={(event) => setSought(event.target.value)}
        onKeyDown={(event) => {
          const first = found[0];
          if (event.key === "Enter" && first) choose(first.ref);
        }}
      />
      <ul aria-label={row.cavity === null ? "Cavities" : "Pins"}>
        {found.slice(0, MOST_SHOWN).map(({ ref, text, taken }) => (
          <li key={ref}>
            <button
              type="button"
              aria-pressed={row.pins.includes(ref) && row.cavity !== null}
              onClick={() => choose(ref)}
            >
              <span>{text}</span>
              {taken !== "" && taken !== row.cavity && (
                <span className={styles.under}>now in {taken}</span>
              )}
            </button>
          </li>
        ))}
        {found.length === 0 && <li className={styles.none}>Nothing of that name.</li>}
        {found.length > MOST_SHOWN && (
          <li className={styles.none}>{found.length - MOST_SHOWN} more: type to narrow it down.</li>
        )}
      </ul>
      {row.cavity !== null && row.pins.length > 0 && (
        <button type="button" className={styles.untie} onClick={untie}>
          Untie {row.pins.join(", ")}
        </button>
      )}
    </div>
  );
}

/** Untied ones first: they are what is looked for. */
const untiedFirst = (a: Choice, b: Choice) => Number(a.taken !== "") - Number(b.taken !== "");

function pinChoices(job: Job): Choice[] {
  const tied = new Map(job.links.map((one) => [one.pin, one.cavity]));
  return job.diagram.parts
    .flatMap((part) =>
      part.kind !== "module"
        ? []
        : part.pins.map((pin): Choice => {
            const ref: PinRef = pinRef(part.id, pin.id);
            const text = pin.printed ? `${ref}  ${pin.printed}` : ref;
            return { ref, text, taken: tied.get(ref) ?? "" };
          }),
    )
    .sort(untiedFirst);
}

function cavityChoices(job: Job): Choice[] {
  const tied = new Map(job.links.map((one) => [one.cavity, one.pin]));
  return job.plugs
    .flatMap((plug) =>
      plug.cavities
        .filter((cavity) => !cavity.blocked)
        .map((cavity): Choice => {
          const ref = pinRef(plug.id, cavity.mark);
          return { ref, text: ref, taken: tied.get(ref) ?? "" };
        }),
    )
    .sort(untiedFirst);
}
