import {
  ChevronDown,
  ClipboardPen,
  Hand,
  Plus,
  SquarePen,
  TableProperties,
  Truck,
} from "lucide-react";
import { freeId, idsOf } from "../../job/index.ts";
import { commandNamed, type Session } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { Button, Menu, MenuChoices, MenuHeading, MenuItem, MenuRule } from "./controls/index.ts";
import styles from "./top-bar.module.css";

/** Adds a machine to the job and puts it at hand. Colours and readings start empty: they are its own. */
export function addMachine(session: Session): void {
  const { job } = session.get();
  const id = freeId(idsOf(job), "machine");
  const name = `Machine ${job.machines.length + 1}`;
  session.edit(`Add ${name}`, (draft) => {
    draft.machines.push({ id, name, wires: [], readings: [], trials: [] });
  });
  session.show({ machine: id, dialog: "machines" });
}

/** Which machine is at hand: wire colours and readings are that one's. */
export function MachineMenu() {
  const session = useSession();
  const machines = useSelected((state) => state.job.machines);
  const machine = useSelected((state) => state.machine);
  const name = machines.find((one) => one.id === machine)?.name ?? "No machine";
  return (
    <Menu
      button={
        <Button tone="quiet" className={styles.machine} aria-label={`Machine: ${name}`}>
          <Truck aria-hidden />
          <span className={styles.machineName}>{name}</span>
          <ChevronDown aria-hidden />
        </Button>
      }
    >
      <MenuHeading>Colours and readings are this machine's own</MenuHeading>
      <MenuChoices
        label="Machine at hand"
        value={machine}
        choices={machines.map((one) => ({
          value: one.id,
          text: one.serial ? `${one.name} · ${one.serial}` : one.name,
        }))}
        onChoose={(id) => session.show({ machine: id })}
      />
      <MenuRule />
      <MenuItem icon={<Plus aria-hidden />} onChoose={() => addMachine(session)}>
        Add a machine
      </MenuItem>
      <MenuItem
        icon={<SquarePen aria-hidden />}
        onChoose={() => session.show({ dialog: "machines" })}
      >
        Name, serial number, hours
      </MenuItem>
      <MenuItem
        icon={<TableProperties aria-hidden />}
        keys="C"
        onChoose={() => session.show({ dialog: "compare" })}
      >
        Compare machines
      </MenuItem>
      <MenuItem
        icon={<ClipboardPen aria-hidden />}
        onChoose={() => session.show({ dialog: "changes" })}
      >
        Retrofits, repairs and options
      </MenuItem>
      <MenuItem icon={<Hand aria-hidden />} onChoose={() => commandNamed("try").run(session)}>
        {commandNamed("try").label}
      </MenuItem>
    </Menu>
  );
}
