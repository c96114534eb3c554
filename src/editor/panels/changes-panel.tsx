import { ClipboardPen, Crosshair, PencilLine, Trash2 } from "lucide-react";
import { type FormEvent, useId, useState } from "react";
import {
  type ChangeRow,
  changeRows,
  commandNamed,
  focusOn,
  goOnRecording,
  newRecording,
  putBack,
  type Recording,
  type Session,
  setChangeNote,
  takeBackChange,
} from "../../session/index.ts";
import { CommandButton } from "../app/command-button.tsx";
import { LabelledField } from "../app/commit-field.tsx";
import { Button, Modal, Tip } from "../app/controls/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./changes-panel.module.css";

const useMachineName = () =>
  useSelected((state) => state.job.machines.find(({ id }) => id === state.machine)?.name ?? "");

/** Hands the boards over to a change of the machine at hand. */
function record(session: Session, recording: Recording | null): void {
  if (recording === null) return;
  session.show({ recording, dialog: null, draft: null, selection: [], station: "diagram" });
}

/** Over the boards: what makes the machine at hand differ from the diagram, and the way to record more. */
export function ChangesDialog() {
  const session = useSession();
  const name = useMachineName();
  return (
    <Modal
      title={`Changes of ${name}`}
      lead="Retrofits, repairs and options: where this machine is not as the diagram says. The diagram stays as it is for the others."
      width="middle"
      onClose={() => session.show({ dialog: null })}
    >
      <ChangeList />
      <NewChange />
    </Modal>
  );
}

/** Beside the boards: the changes of the machine at hand, or one button where there are none. */
export function ChangesPanel() {
  const name = useMachineName();
  const recording = useSelected((state) => state.recording);
  const none = useSelected(
    (state) => !state.job.machines.find(({ id }) => id === state.machine)?.changes?.length,
  );
  const start = commandNamed("record-change");
  if (none && !recording) {
    return (
      <div className={styles.start}>
        <CommandButton command={start} icon={<ClipboardPen aria-hidden />} tone="plain" worded />
      </div>
    );
  }
  return (
    <section className={styles.panel} aria-label="Changes of this machine">
      <h2>Changes of {name}</h2>
      <ChangeList />
      {/* while one is recorded the way back stands over the board */}
      {!recording && (
        <CommandButton command={start} icon={<ClipboardPen aria-hidden />} tone="plain" worded />
      )}
    </section>
  );
}

function ChangeList() {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const rows = changeRows(job, machine);
  if (rows.length === 0) {
    return <p className={styles.none}>Nothing recorded yet: as far as known it is as drawn.</p>;
  }
  return (
    <ol className={styles.list}>
      {rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a change is known by its place alone
        <Row key={index} row={row} index={index} />
      ))}
    </ol>
  );
}

/** More ids than this would be no help. */
const MOST_NAMED = 8;

const named = (ids: readonly string[]): string =>
  ids.length <= MOST_NAMED
    ? ids.join(", ")
    : `${ids.slice(0, MOST_NAMED).join(", ")}, ${ids.length - MOST_NAMED} more`;

function Row({ row, index }: { row: ChangeRow; index: number }) {
  const session = useSession();
  const now = useSelected((state) => state.recording?.change === index);
  const number = index + 1;
  const wires = row.wires === 1 ? "1 wire" : row.wires > 1 ? `${row.wires} wires` : "";
  const added = [named(row.parts), wires].filter(Boolean).join(" and ");
  const show = () => {
    session.show({ dialog: null, selection: row.refs.slice(0, 1), station: "diagram" });
    focusOn(row.refs);
  };
  return (
    <li data-recording={now}>
      <LabelledField
        label={`Change ${number}`}
        className={styles.note}
        value={row.note}
        live
        onCommit={(note, merge) => setChangeNote(session, index, note, merge)}
      />
      <p className={styles.what}>
        {added !== "" && <span>+ added {added}</span>}
        {row.leftOut.length > 0 && <span>✕ taken out {named(row.leftOut)}</span>}
        {added === "" && row.leftOut.length === 0 && <span>nothing drawn yet</span>}
      </p>
      {row.leftOut.length > 0 && (
        <div className={styles.backs}>
          {row.leftOut.map((id) => (
            <Button key={id} tone="plain" onClick={() => putBack(session, index, id)}>
              Put {id} back
            </Button>
          ))}
        </div>
      )}
      <div className={styles.acts}>
        {now ? (
          <strong>being recorded</strong>
        ) : (
          <Tip text="Draw more of this change">
            <Button
              tone="quiet"
              icon={<PencilLine aria-hidden />}
              aria-label={`Go on with change ${number}`}
              onClick={() => {
                const { job, machine } = session.get();
                record(session, goOnRecording(job, machine, index));
              }}
            />
          </Tip>
        )}
        <Tip text="Show it on the diagram">
          <Button
            tone="quiet"
            icon={<Crosshair aria-hidden />}
            aria-label={`Show change ${number} on the diagram`}
            disabled={row.refs.length === 0}
            onClick={show}
          />
        </Tip>
        <Tip text="Take the whole change back">
          <Button
            tone="quiet"
            icon={<Trash2 aria-hidden />}
            aria-label={`Take change ${number} back`}
            onClick={() => takeBackChange(session, index)}
          />
        </Tip>
      </div>
    </li>
  );
}

/** What was done, in words, before anything of it is drawn: without them nobody would know why. */
function NewChange() {
  const session = useSession();
  const id = useId();
  const [note, setNote] = useState("");
  const [wrong, setWrong] = useState(false);
  const begin = (event: FormEvent) => {
    event.preventDefault();
    const words = note.trim();
    setWrong(words === "");
    const { job, machine } = session.get();
    if (words !== "") record(session, newRecording(job, machine, words));
  };
  return (
    <form className={styles.begin} onSubmit={begin}>
      <label htmlFor={id}>What was done</label>
      <input
        id={id}
        data-first
        value={note}
        placeholder="Work lamp fitted"
        autoComplete="off"
        aria-invalid={wrong}
        onChange={(event) => setNote(event.target.value)}
      />
      <Button type="submit" tone="primary" icon={<ClipboardPen aria-hidden />}>
        Record on the diagram
      </Button>
      {wrong && (
        <p className={styles.wrong} role="alert">
          Write first what was done to the machine.
        </p>
      )}
      <p className={styles.hint}>
        Then draw what was added and delete what was taken out. It counts for this machine only,
        until you press “Back to the diagram”.
      </p>
    </form>
  );
}
