import { Plus, Trash2 } from "lucide-react";
import type { EditOptions, Machine } from "../../job/index.ts";
import { forgetThings } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { LabelledField } from "./commit-field.tsx";
import { Button, Modal } from "./controls/index.ts";
import { addMachine } from "./machine-menu.tsx";
import styles from "./machines-dialog.module.css";

const parseHours = (text: string): number | null => {
  const hours = Number(text.replace(",", ".").replace(/\s*h(ours)?$/i, ""));
  return Number.isFinite(hours) && hours >= 0 ? hours : null;
};

/** Names, serial numbers and hours of the machines of this job. */
export function MachinesDialog() {
  const session = useSession();
  const machines = useSelected((state) => state.job.machines);
  return (
    <Modal
      title="Machines"
      lead="One diagram, several machines: wire colours and readings are kept for each."
      onClose={() => session.show({ dialog: null })}
    >
      <ul className={styles.list}>
        {machines.map((machine) => (
          <MachineRow key={machine.id} machine={machine} only={machines.length === 1} />
        ))}
      </ul>
      <Button icon={<Plus aria-hidden />} onClick={() => addMachine(session)}>
        Add a machine
      </Button>
    </Modal>
  );
}

function MachineRow({ machine, only }: { machine: Machine; only: boolean }) {
  const session = useSession();
  const change = (label: string, merge: EditOptions, set: (draft: Machine) => void) =>
    session.edit(
      label,
      (draft) => {
        const own = draft.machines.find((one) => one.id === machine.id);
        if (own) set(own);
      },
      merge,
    );
  return (
    <li className={styles.machine}>
      <LabelledField
        label="Name"
        className={styles.name}
        value={machine.name}
        live
        onCommit={(name, merge) =>
          change(`Rename the machine “${name}”`, merge, (own) => {
            own.name = name;
          })
        }
      />

      <LabelledField
        label="Serial number"
        className={styles.field}
        value={machine.serial ?? ""}
        mayBeEmpty
        live
        onCommit={(serial, merge) =>
          change(`Set the serial number of ${machine.name}`, merge, (own) => {
            if (serial) own.serial = serial;
            else delete own.serial;
          })
        }
      />

      <LabelledField
        label="Hours"
        className={styles.field}
        value={machine.hours === undefined ? "" : String(machine.hours)}
        inputMode="decimal"
        mayBeEmpty
        live
        onCommit={(text, merge) => {
          const hours = text === "" ? undefined : parseHours(text);
          if (hours === null) {
            session.show({ notice: { tone: "error", text: `“${text}” is no number of hours.` } });
            return;
          }
          change(`Set the hours of ${machine.name}`, merge, (own) => {
            if (hours === undefined) delete own.hours;
            else own.hours = hours;
          });
        }}
      />

      <Button
        tone="quiet"
        icon={<Trash2 aria-hidden />}
        aria-label={`Take ${machine.name} out of this job`}
        title={only ? "A job keeps at least one machine" : undefined}
        disabled={only}
        onClick={() =>
          session.edit(`Take out ${machine.name}`, (draft) => {
            draft.machines = draft.machines.filter((one) => one.id !== machine.id);
            forgetThings(draft, (ref) => ref === machine.id);
          })
        }
      />
    </li>
  );
}
