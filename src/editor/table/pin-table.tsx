import { type KeyboardEvent, useMemo, useRef, useState } from "react";
import { counterparts, type PinRow, pinRows, placeProbe } from "../../session/index.ts";
import { useAnalysis, useSelected, useSession } from "../session-context.tsx";
import styles from "./pin-table.module.css";
import { PinTableRow, type RowActs } from "./pin-table-row.tsx";
import { useKeptRows } from "./use-kept-rows.ts";
import { usePictures } from "./use-pictures.ts";

const COLUMNS = ["Mark", "Pin", "Printed", "Circuit", "Meter", "Wire", "Verdict"] as const;

/** The spine of the program: one row a cavity, with what print, circuit and meter say of it. */
export function PinTable() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const plug = useSelected((state) => state.plug);
  const selection = useSelected((state) => state.selection);
  const analysis = useAnalysis();
  const pictures = usePictures(plug);
  const rows = useKeptRows(
    useMemo(
      () => pinRows(job, machine, plug, analysis, pictures),
      [job, machine, plug, analysis, pictures],
    ),
  );
  const lit = useMemo(
    () => counterparts(job, analysis, selection).refs,
    [job, analysis, selection],
  );
  const [open, setOpen] = useState<string | null>(null);
  const body = useRef<HTMLTableSectionElement>(null);
  const chosen = rows.find((row) => isChosen(row, selection)) ?? null;

  const shown = useRef(rows);
  shown.current = rows;
  const acts = useMemo<RowActs>(() => {
    const choose = (row: PinRow) => session.show({ selection: [row.ref] });
    // While the pad asks for a lead's place, a tapped row is that place.
    const onChoose = (row: PinRow) => {
      const { draft } = session.get();
      if (draft?.asks) session.show({ draft: placeProbe(draft, row.ref) });
      else choose(row);
    };
    const onToggle = (row: PinRow) => {
      choose(row);
      setOpen((now) => (now === row.key ? null : row.key));
    };
    const go = (to: number) => {
      const all = shown.current;
      const row = all[Math.max(0, Math.min(all.length - 1, to))];
      if (!row) return;
      choose(row);
      focusRow(body.current, row.key);
    };
    const onKeyDown = (event: KeyboardEvent, row: PinRow) => {
      // Only keys pressed on the row itself: fields and buttons inside it have their own.
      if (event.target !== event.currentTarget) return;
      const all = shown.current;
      const target = targetOf(event.key, all.indexOf(row), all.length);
      if (target !== null) go(target);
      else if (event.key === "Enter") onToggle(row);
      else if (event.key === " ") onChoose(row);
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    return { onChoose, onToggle, onKeyDown };
  }, [session]);

  if (rows.length === 0) return <EmptyTable hasModule={hasModule(job)} />;

  return (
    <div className={styles.frame}>
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows can be chosen and stepped through */}
      <table className={styles.table} role="grid" aria-label="Pins and cavities">
        <thead>
          <tr>
            {COLUMNS.map((name) => (
              <th key={name} scope="col" data-column={name.toLowerCase()}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {rows.map((row, place) => (
            <PinTableRow
              key={row.key}
              row={row}
              lit={lit.has(row.ref) || row.pins.some((pin) => lit.has(pin))}
              chosen={row === chosen}
              open={row.key === open}
              reachable={chosen ? row === chosen : place === 0}
              columns={COLUMNS.length}
              acts={acts}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The row that a key leads to; null for a key that leads nowhere. */
function targetOf(key: string, place: number, count: number): number | null {
  switch (key) {
    case "ArrowDown":
      return place + 1;
    case "ArrowUp":
      return place - 1;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return null;
  }
}

/** The chief selection is this cavity or one of its pins. */
function isChosen(row: PinRow, selection: readonly string[]): boolean {
  const chief = selection[0];
  return chief !== undefined && (chief === row.ref || row.pins.includes(chief));
}

function focusRow(body: HTMLElement | null, key: string) {
  const row = [...(body?.querySelectorAll<HTMLElement>("tr[data-row]") ?? [])].find(
    (one) => one.dataset.row === key,
  );
  row?.focus({ preventScroll: true });
  row?.scrollIntoView?.({ block: "nearest" });
}

const hasModule = (job: { diagram: { parts: readonly { kind: string }[] } }) =>
  job.diagram.parts.some((part) => part.kind === "module");

function EmptyTable({ hasModule: module }: { hasModule: boolean }) {
  return (
    <p className={styles.empty}>
      {module
        ? "The module has no pins yet. Give it pins on the diagram, or draw the plug: each cavity becomes a row here."
        : "Each cavity of the plug becomes a row here: what is printed beside its pin, what the circuit says, what the meter says. Place the module on the diagram or draw the plug to begin."}
    </p>
  );
}
