import type { EditOptions, Wire } from "../../../../job/index.ts";
import { setWireField, setWords, type WordChange } from "../../../../session/index.ts";
import { areaInMapping, type GaugeMapping, gaugeInMapping } from "../../../../standards/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { ColourFields } from "../../plug/colour-fields.tsx";
import { EditField } from "../../plug/fields.tsx";
import { NumberField } from "./number-field.tsx";
import { PinPick } from "./pin-pick.tsx";

/** Number, colour, size, length and ends of a wire as the diagram has them. */
export function WireDetails({ wire }: { wire: Wire }) {
  const session = useSession();
  const gauges = useSelected((state) => state.job.conductors?.gauges);
  const { id } = wire;
  const write = (label: string, change: WordChange, merge?: EditOptions) =>
    session.edit(`${label} of ${id}`, (draft) => setWords(draft, id, change), merge);
  const set = (label: string, field: "mm2" | "metres" | "awg", value: number | undefined) =>
    session.edit(`Set the ${label} of ${id}`, (draft) => setWireField(draft, id, field, value));
  /** What the mapping that the job chose has for the other of the two; nothing is stored. */
  const beside = (
    known: number | undefined,
    mapped: (known: number, mapping: GaugeMapping) => number | null,
  ) => {
    const found = known === undefined || !gauges ? null : mapped(known, gauges);
    return found === null ? undefined : `${found}, by the mapping`;
  };
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
        placeholder={beside(wire.awg, areaInMapping)}
        onChange={(value) => set("size", "mm2", value)}
      />
      <NumberField
        label="Gauge"
        unit="AWG"
        zero
        value={wire.awg}
        placeholder={beside(wire.mm2, gaugeInMapping)}
        onChange={(value) => set("gauge", "awg", value)}
      />
      <NumberField
        label="Length"
        unit="m"
        value={wire.metres}
        onChange={(value) => set("length", "metres", value)}
      />
      <ColourFields
        colour={wire.colour ?? null}
        none="not printed"
        onChange={(colour) => write("Set the colour", { colour })}
      />
      <PinPick wire={wire} which="from" />
      <PinPick wire={wire} which="to" />
    </>
  );
}
