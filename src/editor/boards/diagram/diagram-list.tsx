import { Plus } from "lucide-react";
import { type ReactNode, useId, useState } from "react";
import { KINDS, kindOf } from "../../../circuit/index.ts";
import { ownerOf, type Part, type PartKindName, type Wire } from "../../../job/index.ts";
import {
  addPart,
  drawnOf,
  focusOn,
  layWire,
  requestView,
  routedWire,
  type Session,
  sceneOf,
  sheetForDrawing,
  unitFor,
} from "../../../session/index.ts";
import { formatColour } from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { ColourSwatch } from "../plug/colour-swatch.tsx";
import { PinChoice, usePinOptions } from "./details/pin-pick.tsx";
import styles from "./diagram-list.module.css";
import { valueWords } from "./drawing/value-words.ts";

const KIND_NAMES = Object.keys(KINDS) as PartKindName[];
/** Rows shown before the user asks for all of them: a large diagram has thousands. */
const FIRST_ROWS = 60;

/** Everything drawn, as tables: what the board shows can be added, chosen and changed here by keyboard. */
export function DiagramList() {
  const sheet = useSelected((state) => state.sheet);
  const { diagram } = useSelected(drawnOf);
  const [words, setWords] = useState("");
  const searchId = useId();
  const matches = (text: string) => text.toLowerCase().includes(words.trim().toLowerCase());
  const here = new Set<string>();
  const parts = diagram.parts.filter((part) => {
    if (part.sheet === sheet) here.add(part.id);
    return part.sheet === sheet && matches(partText(part));
  });
  const wires = diagram.wires.filter(
    (wire) => here.has(ownerOf(wire.from)) && matches(wireText(wire)),
  );
  return (
    <section className={styles.list} aria-label="Parts and wires">
      <h2>Parts and wires</h2>
      <AddPart />
      <AddWire sheet={sheet} />
      {here.size > 8 && (
        <div className={styles.add}>
          <label htmlFor={searchId}>Only those with</label>
          <input
            id={searchId}
            type="search"
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
        </div>
      )}
      <Rows caption="Parts" columns={["Id", "Kind", "Label, value"]} things={parts}>
        {(part) => <PartRow key={part.id} part={part} />}
      </Rows>
      <Rows caption="Wires" columns={["Id", "From, to", "Number, colour"]} things={wires}>
        {(wire) => <WireRow key={wire.id} wire={wire} />}
      </Rows>
    </section>
  );
}

const partText = (part: Part) =>
  [part.id, kindOf(part.kind).title, part.label, part.place, valueWords(part)].join(" ");

const wireText = (wire: Wire) =>
  [wire.id, wire.from, wire.to, wire.number, wire.colour && formatColour(wire.colour)].join(" ");

interface RowsProps<T> {
  caption: string;
  columns: readonly string[];
  things: readonly T[];
  children: (thing: T) => ReactNode;
}

function Rows<T>({ caption, columns, things, children }: RowsProps<T>) {
  const [all, setAll] = useState(false);
  if (things.length === 0) return null;
  const shown = all ? things : things.slice(0, FIRST_ROWS);
  return (
    <>
      <table className={styles.table}>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{shown.map(children)}</tbody>
      </table>
      {shown.length < things.length && (
        <Button onClick={() => setAll(true)}>Show all {things.length}</Button>
      )}
    </>
  );
}

function Choose({ id }: { id: string }) {
  const session = useSession();
  const chosen = useSelected((state) => state.selection.includes(id));
  return (
    <button
      type="button"
      className={styles.choose}
      aria-pressed={chosen}
      onClick={() => {
        session.show({ selection: [id] });
        focusOn([id]);
      }}
    >
      {id}
    </button>
  );
}

function PartRow({ part }: { part: Part }) {
  return (
    <tr>
      <td>
        <Choose id={part.id} />
      </td>
      <td>{kindOf(part.kind).title}</td>
      <td>{[part.label, part.place, valueWords(part)].filter(Boolean).join(", ")}</td>
    </tr>
  );
}

function WireRow({ wire }: { wire: Wire }) {
  return (
    <tr>
      <td>
        <Choose id={wire.id} />
      </td>
      <td>
        {wire.from} – {wire.to}
      </td>
      <td>
        {wire.number} {wire.colour && <ColourSwatch colour={wire.colour} />}{" "}
        {wire.colour && formatColour(wire.colour)}
      </td>
    </tr>
  );
}

/** Where no board is on the screen to say what is seen: beside the part laid last. */
function addOutOfSight(session: Session, kind: PartKindName): void {
  const { sheet } = session.get();
  const job = drawnOf(session.get());
  const last = job.diagram.parts.findLast((part) => part.sheet === sheet);
  const step = 8 * unitFor(job, sheet ?? "");
  const [x, y] = last?.at ?? [0, 0];
  let id = "";
  session.edit(`Place ${kindOf(kind).title}`, (draft) => {
    id = addPart(draft, kind, sheetForDrawing(draft, sheet), [x + step, y + step]);
  });
  session.show({ selection: [id] });
}

function AddPart() {
  const session = useSession();
  const id = useId();
  const [kind, setKind] = useState<PartKindName>("fuse");
  return (
    <form
      className={styles.add}
      onSubmit={(event) => {
        event.preventDefault();
        if (!requestView({ ask: "place", kind })) addOutOfSight(session, kind);
      }}
    >
      <label htmlFor={id}>Part</label>
      <select
        id={id}
        value={kind}
        onChange={(event) => setKind(event.target.value as PartKindName)}
      >
        {KIND_NAMES.map((name) => (
          <option key={name} value={name}>
            {kindOf(name).title}
          </option>
        ))}
      </select>
      <Button type="submit" icon={<Plus aria-hidden />}>
        Add part
      </Button>
    </form>
  );
}

/** Stands for an end that goes on and is not traced. */
const GOES_ON = { value: "goes on", text: "goes on, not traced" };

function AddWire({ sheet }: { sheet: string | null }) {
  const session = useSession();
  const pins = usePinOptions(sheet);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const ready = from !== "" && to !== "" && from !== to && sheet !== null;
  const lay = () => {
    const job = drawnOf(session.get());
    if (!ready || sheet === null) return;
    const scene = sceneOf(job.diagram, sheet);
    const end = to === GOES_ON.value ? null : to;
    const plan = routedWire(scene, from, end, unitFor(job, sheet));
    let wire: string | null = null;
    session.edit("Draw a wire", (draft) => {
      if (plan) wire = layWire(draft, plan);
    });
    if (wire !== null) session.show({ selection: [wire] });
    setFrom("");
    setTo("");
  };
  return (
    <form
      className={styles.wire}
      onSubmit={(event) => {
        event.preventDefault();
        lay();
      }}
    >
      <PinChoice label="Wire from" value={from} options={pins} onChange={setFrom} />
      <PinChoice label="to" value={to} options={[GOES_ON, ...pins]} onChange={setTo} />
      <Button type="submit" icon={<Plus aria-hidden />} disabled={!ready}>
        Add wire
      </Button>
    </form>
  );
}
