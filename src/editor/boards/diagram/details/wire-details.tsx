import { useState } from "react";
import type { Colour, EditOptions, Wire } from "../../../../job/index.ts";
import { setWireField, setWords, type WordChange } from "../../../../session/index.ts";
import {
  type ColourCode,
  formatColour,
  nameColour,
  parseColour,
} from "../../../../standards/index.ts";
import { useSession } from "../../../session-context.tsx";
import { ColourPicker } from "../../plug/colour-picker.tsx";
import { ColourSwatch } from "../../plug/colour-swatch.tsx";
import { EditField } from "../../plug/fields.tsx";
import styles from "./details.module.css";
import { NumberField } from "./number-field.tsx";
import { PinPick } from "./pin-pick.tsx";

/** Number, colour, size, length and ends of a wire as the diagram has them. */
export function WireDetails({ wire }: { wire: Wire }) {
  const session = useSession();
  const { id } = wire;
  const write = (label: string, change: WordChange, merge?: EditOptions) =>
    session.edit(`${label} of ${id}`, (draft) => setWords(draft, id, change), merge);
  const set = (label: string, field: "mm2" | "metres" | "awg", value: number | undefined) =>
    session.edit(`Set the ${label} of ${id}`, (draft) => setWireField(draft, id, field, value));
  return (
    <>
      <EditField
        label="Printed number"
        value={wire.number ?? ""}
        live
        onCommit={(number, merge) => write("Set the number", { number }, merge)}
      />
      <NumberField
        label="Size"
        unit="mm²"
        value={wire.mm2}
        onChange={(value) => set("size", "mm2", value)}
      />
      <NumberField
        label="Gauge"
        unit="AWG"
        zero
        value={wire.awg}
        onChange={(value) => set("gauge", "awg", value)}
      />
      <NumberField
        label="Length"
        unit="m"
        value={wire.metres}
        onChange={(value) => set("length", "metres", value)}
      />
      <WireColour
        colour={wire.colour ?? null}
        onChange={(colour) => write("Set the colour", { colour })}
      />
      <PinPick wire={wire} which="from" />
      <PinPick wire={wire} which="to" />
    </>
  );
}

function WireColour({
  colour,
  onChange,
}: {
  colour: Colour | null;
  onChange: (colour: Colour | null) => void;
}) {
  const [wrong, setWrong] = useState<string | null>(null);
  const base = (code: ColourCode | null) => {
    const tracer = colour?.tracer && colour.tracer !== code ? { tracer: colour.tracer } : {};
    onChange(code ? { base: code, ...tracer } : null);
  };
  const tracer = (code: ColourCode | null) => {
    if (colour) onChange(code ? { base: colour.base, tracer: code } : { base: colour.base });
  };
  const type = (text: string) => {
    const typed = text === "" ? null : parseColour(text);
    setWrong(text !== "" && !typed ? `“${text}” is no colour code. Type it like BNBK.` : null);
    if (text === "" || typed) onChange(typed);
  };
  return (
    <fieldset className={styles.colour}>
      <legend>
        Colour <ColourSwatch colour={colour} />{" "}
        {colour ? `${formatColour(colour)}, ${nameColour(colour)}` : "not printed"}
      </legend>
      <ColourPicker label="Base" value={colour?.base ?? null} none="no colour" onPick={base} />
      {colour && (
        <ColourPicker
          label="Tracer"
          value={colour.tracer ?? null}
          none="no tracer"
          except={colour.base}
          onPick={tracer}
        />
      )}
      <EditField
        label="or type it"
        value={colour ? formatColour(colour) : ""}
        placeholder="BNBK"
        problem={wrong}
        onCommit={type}
      />
    </fieldset>
  );
}
