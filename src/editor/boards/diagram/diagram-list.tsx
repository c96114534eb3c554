import { Plus } from "lucide-react";
import { useId, useState } from "react";
import { KINDS, kindOf } from "../../../circuit/index.ts";
import type { Part, PartKindName, Wire } from "../../../job/index.ts";
import {
  focusOn,
  layWire,
  requestView,
  routedWire,
  sceneOf,
  unitFor,
} from "../../../session/index.ts";
import { formatColour } from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { ColourSwatch } from "../plug/colour-swatch.tsx";
import { usePinOptions } from "./details/pin-pick.tsx";
import styles from "./diagram-list.module.css";
import { valueWords } from "./drawing/value-words.ts";

const KIND_NAMES = Object.keys(KINDS) as PartKindName[];

/** Everything drawn, as tables: what the board shows can be added, chosen and changed here by keyboard. */
export function DiagramList() {
  const sheet = useSelected((state) => state.sheet);
  const diagram = useSelected((state) => state.job.diagram);
  const parts = diagram.parts.filter((part) => part.sheet === sheet);
  const here = new Set(parts.map((part) => part.id));
  const wires = diagram.wires.filter((wire) =>
    here.has(wire.from.slice(0, wire.from.indexOf(":"))),
  );
  return (
    <section className={styles.list} aria-label="Parts and wires">
      <h2>Parts and wires</h2>
      <AddPart />
      <AddWire sheet={sheet} />
      {parts.length > 0 && (
        <table className={styles.table}>
          <caption>Parts</caption>
          <thead>
            <tr>
              <th scope="col">Id</th>
              <th scope="col">Kind</th>
              <th scope="col">Label, value</th>
            </tr>
          </thead>
          <tbody>
            {parts.map((part) => (
              <PartRow key={part.id} part={part} />
            ))}
          </tbody>
        </table>
      )}
      {wires.length > 0 && (
        <table className={styles.table}>
          <caption>Wires</caption>
          <thead>
            <tr>
              <th scope="col">Id</th>
              <th scope="col">From, to</th>
              <th scope="col">Number, colour</th>
            </tr>
          </thead>
          <tbody>
            {wires.map((wire) => (
              <WireRow key={wire.id} wire={wire} />
            ))}
          </tbody>
        </table>
      )}
    </section>
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

function AddPart() {
  const id = useId();
  const [kind, setKind] = useState<PartKindName>("fuse");
  return (
    <form
      className={styles.add}
      onSubmit={(event) => {
        event.preventDefault();
        requestView({ ask: "place", kind });
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
const GOES_ON = "goes on";

function AddWire({ sheet }: { sheet: string | null }) {
  const session = useSession();
  const id = useId();
  const pins = usePinOptions(sheet);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const ready = from !== "" && to !== "" && from !== to && sheet !== null;
  const lay = () => {
    const { job } = session.get();
    if (!ready || sheet === null) return;
    const scene = sceneOf(job.diagram, sheet);
    const plan = routedWire(scene, from, to === GOES_ON ? null : to, unitFor(job, sheet));
    let wire: string | null = null;
    session.edit("Draw a wire", (draft) => {
      if (plan) wire = layWire(draft, plan);
    });
    if (wire !== null) session.show({ selection: [wire] });
    setFrom("");
    setTo("");
  };
  const options = pins.map((pin) => (
    <option key={pin.value} value={pin.value}>
      {pin.text}
    </option>
  ));
  return (
    <form
      className={styles.add}
      onSubmit={(event) => {
        event.preventDefault();
        lay();
      }}
    >
      <label htmlFor={`${id}from`}>Wire from</label>
      <select id={`${id}from`} value={from} onChange={(event) => setFrom(event.target.value)}>
        <option value="">choose a pin</option>
        {options}
      </select>
      <label htmlFor={`${id}to`}>to</label>
      <select id={`${id}to`} value={to} onChange={(event) => setTo(event.target.value)}>
        <option value="">choose a pin</option>
        <option value={GOES_ON}>goes on, not traced</option>
        {options}
      </select>
      <Button type="submit" icon={<Plus aria-hidden />} disabled={!ready}>
        Add wire
      </Button>
    </form>
  );
}
