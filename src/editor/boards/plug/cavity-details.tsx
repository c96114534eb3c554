import {
  type CavityRef,
  type EditOptions,
  type Job,
  type PinRef,
  pinRef,
  splitRef,
} from "../../../job/index.ts";
import {
  drawnOf,
  link,
  type MachineWireChange,
  placeOf,
  setMachineWire,
  unlink,
} from "../../../session/index.ts";
import { DropAlong } from "../../panels/drop-along.tsx";
import { WordMeaning } from "../../panels/words/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { PinPicker } from "../../table/pin-picker.tsx";
import { CavityCorrections } from "./cavity-corrections.tsx";
import styles from "./cavity-details.module.css";
import { MachineWireFields } from "./machine-wire-fields.tsx";
import { PhotoColourButton } from "./photo-colour-button.tsx";

/** The cavity that a selection is about: itself, or the one that the chosen pin is tied to. */
function cavityOf(job: Job, selection: readonly string[]): CavityRef | null {
  for (const ref of selection) {
    if (placeOf(job, ref)) return ref;
    const tied = job.links.find((one) => one.pin === ref);
    if (tied && placeOf(job, tied.cavity)) return tied.cavity;
  }
  return null;
}

/** What is known of the wire in one cavity on the machine at hand; of the chosen one unless told. */
export function CavityDetails({ cavity }: { cavity?: CavityRef }) {
  const job = useSelected((state) => state.job);
  const selection = useSelected((state) => state.selection);
  const ref = cavity ?? cavityOf(job, selection);
  return (
    <section className={styles.details} aria-label="Cavity" tabIndex={-1} data-keeps-focus>
      {ref === null ? (
        <p>Choose a cavity to note its wire's colour, number and size.</p>
      ) : (
        <WireFields key={ref} cavity={ref} job={job} />
      )}
    </section>
  );
}

function WireFields({ cavity, job }: { cavity: CavityRef; job: Job }) {
  const session = useSession();
  const machineId = useSelected((state) => state.machine);
  const machine = job.machines.find((one) => one.id === machineId);
  const wire = machine?.wires.find((one) => one.cavity === cavity) ?? null;
  const { owner, name } = splitRef(cavity);
  const tied = job.links.find((one) => one.cavity === cavity)?.pin;
  const note = (label: string, change: MachineWireChange, merge?: EditOptions) =>
    session.edit(
      `${label} in ${cavity}`,
      (draft) => setMachineWire(draft, machineId, cavity, change),
      merge,
    );
  return (
    <>
      <h3>
        Cavity {name} of {owner}
      </h3>
      <p className={styles.machine}>Wire on {machine?.name ?? "no machine"}</p>
      {machine && <MachineWireFields wire={wire} onNote={note} />}
      {machine && <PhotoColourButton plug={owner} cavity={cavity} />}
      <PinPick cavity={cavity} job={job} />
      {tied && <WordMeaning key={tied} pin={tied} />}
      <DropAlong of={cavity} />
      <CavityCorrections cavity={cavity} job={job} />
    </>
  );
}

/** Of more pins than this a list takes long to open, and longer to find one in: it is searched. */
const MOST_LISTED = 400;

function PinPick({ cavity, job }: { cavity: CavityRef; job: Job }) {
  const session = useSession();
  const tied = job.links.find((one) => one.cavity === cavity)?.pin ?? "";
  const modules = useSelected(drawnOf).diagram.parts.filter((part) => part.kind === "module");
  const pick = (pin: PinRef) =>
    pin === ""
      ? session.edit(`Untie ${cavity}`, (draft) => unlink(draft, cavity))
      : session.edit(`Tie ${pin} to ${cavity}`, (draft) => link(draft, pin, cavity));
  if (modules.reduce((count, part) => count + part.pins.length, 0) > MOST_LISTED) {
    const { name } = splitRef(cavity);
    const pins = tied === "" ? [] : [tied];
    return (
      <div className={styles.pin}>
        <span>Pin on the diagram</span>
        <PinPicker row={{ cavity, ref: cavity, pins, mark: name, state: "wired" }} />
      </div>
    );
  }
  const listed = modules.some((part) => part.pins.some((pin) => pinRef(part.id, pin.id) === tied));
  return (
    <label>
      Pin on the diagram
      <select value={tied} onChange={(event) => pick(event.target.value)}>
        <option value="">none</option>
        {tied !== "" && !listed && <option value={tied}>{tied}</option>}
        {modules.map((part) => (
          <optgroup key={part.id} label={part.label ? `${part.id} · ${part.label}` : part.id}>
            {part.pins.map((pin) => (
              <option key={pin.id} value={pinRef(part.id, pin.id)}>
                {pinRef(part.id, pin.id)}
                {pin.printed ? ` ${pin.printed}` : ""}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </label>
  );
}
