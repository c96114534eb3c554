import { Popover } from "radix-ui";
import { useRef } from "react";
import type { ReadingVerdict } from "../../../readings/index.ts";
import type { Verdict } from "../../../roles/index.ts";
import {
  type ComparisonRow,
  type MachineCell,
  setMachineWire,
  wordsForLook,
  wordsForMark,
  wordsForReading,
} from "../../../session/index.ts";
import { MachineWireFields } from "../../boards/plug/machine-wire-fields.tsx";
import { useSelected, useSession } from "../../session-context.tsx";
import { StatusMark } from "../status-shape.tsx";
import styles from "./compare-table.module.css";
import { LookedAt } from "./looked-at.tsx";

interface CompareCellProps {
  row: ComparisonRow;
  cell: MachineCell;
  /** The machine's. */
  name: string;
}

/** What one machine has in one cavity, with its marks and verdicts; a tap notes its wire. */
export function CompareCell({ row, cell, name }: CompareCellProps) {
  const { drawnHere, marks, verdict, meterVerdict, meterRole, circuit } = cell;
  const reading = wordsForReading(cell);
  return (
    <td className={styles.cell} data-differs={marks.length > 0}>
      <div className={styles.lines}>
        <WireOf row={row} cell={cell} name={name} />
        {marks.map((mark) => (
          <StatusMark key={mark} status={mark === "turned" ? "note" : "warning"}>
            {wordsForMark(mark)}
          </StatusMark>
        ))}
        {drawnHere && (
          <span className={styles.soft}>
            changed on this machine, drawn {wordsForLook(drawnHere) || "with no wire"}
          </span>
        )}
        {verdict && (
          <Judged name="Word" status={verdict}>
            {circuit === "" ? verdict : `${verdict}: ${circuit}`}
          </Judged>
        )}
        {meterVerdict && (reading !== "" || meterRole !== "") && (
          <Judged name="Meter" status={meterVerdict}>
            {meterRole === "" ? meterVerdict : `${meterVerdict}: ${meterRole}`}
          </Judged>
        )}
        {cell.reading && (
          <Judged name="Reading" status={STATUS_OF_READING[cell.reading.verdict]}>
            {reading}
          </Judged>
        )}
      </div>
    </td>
  );
}

const STATUS_OF_READING: Readonly<Record<ReadingVerdict, "agrees" | "warning" | "unproven">> = {
  inside: "agrees",
  outside: "warning",
  "not-comparable": "unproven",
  invalid: "unproven",
};

interface JudgedProps {
  name: string;
  status: Verdict | "warning";
  children: string;
}

const Judged = ({ name, status, children }: JudgedProps) => (
  <span className={styles.judged}>
    <span className={styles.soft}>{name}</span>
    <StatusMark status={status}>{children}</StatusMark>
  </span>
);

/** The wire as noted; shown and changed as the job has it now, not as the table was worked out. */
function WireOf({ row, cell, name }: CompareCellProps) {
  const session = useSession();
  const { cavity, mark } = row;
  const content = useRef<HTMLDivElement>(null);
  const noted = useSelected(({ job }) =>
    job.machines.find(({ id }) => id === cell.machine)?.wires.find((one) => one.cavity === cavity),
  );
  const look = {
    colour: noted?.colour ?? null,
    number: noted?.number ?? null,
    mm2: noted?.mm2 ?? null,
    awg: null,
  };
  return (
    <Popover.Root>
      <Popover.Trigger
        className={styles.open}
        aria-label={`Wire in cavity ${mark} of ${name}: ${wordsForLook(look) || "not noted"}. Change it`}
      >
        <LookedAt look={look} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          ref={content}
          data-portal
          className={styles.popover}
          collisionPadding={8}
          aria-label={`Wire in cavity ${mark} of ${name}`}
          onEscapeKeyDown={(event) => {
            // A field in which somebody types takes the first Escape for itself.
            const { target } = event;
            if (target instanceof Element && target.closest("[data-own-escape]"))
              event.preventDefault();
          }}
          onFocusOutside={(event) => {
            // The dialog takes the focus when a mark goes from its table just after a field was left.
            const { target } = event;
            if (!(target instanceof Element && target.matches('[role="dialog"]'))) return;
            event.preventDefault();
            content.current?.focus();
          }}
        >
          <h3>
            Cavity {mark} of {name}
          </h3>
          <MachineWireFields
            wire={noted ?? null}
            onNote={(what, change, merge) =>
              session.edit(
                `${what} in ${cavity} of ${name}`,
                (draft) => setMachineWire(draft, cell.machine, cavity, change),
                merge,
              )
            }
          />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
