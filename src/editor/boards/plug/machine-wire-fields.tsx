import { useState } from "react";
import type { EditOptions, MachineWire } from "../../../job/index.ts";
import type { MachineWireChange } from "../../../session/index.ts";
import { ColourFields } from "./colour-fields.tsx";
import { EditField } from "./fields.tsx";
import styles from "./machine-wire-fields.module.css";

interface MachineWireFieldsProps {
  /** What is noted so far; null: nothing. */
  wire: MachineWire | null;
  /** Makes the edit; `what` begins its label, e.g. `Note the wire colour`. */
  onNote: (what: string, change: MachineWireChange, merge?: EditOptions) => void;
}

/** Colour, printed number, size and a note of the wire in one cavity on one machine. */
export function MachineWireFields({ wire, onNote }: MachineWireFieldsProps) {
  return (
    <>
      <ColourFields
        colour={wire?.colour ?? null}
        none="not seen yet"
        onChange={(colour) => onNote("Note the wire colour", { colour })}
      />
      <div className={styles.pair}>
        <EditField
          label="Printed number"
          value={wire?.number ?? ""}
          live
          onCommit={(text, merge) =>
            onNote("Note the wire number", { number: text || null }, merge)
          }
        />
        <SizeField
          mm2={wire?.mm2 ?? null}
          onSize={(mm2) => onNote("Note the wire size", { mm2 })}
        />
      </div>
      <EditField
        label="Note"
        value={wire?.note ?? ""}
        live
        onCommit={(text, merge) =>
          onNote("Note something of the wire", { note: text || null }, merge)
        }
      />
    </>
  );
}

interface SizeFieldProps {
  mm2: number | null;
  onSize: (mm2: number | null) => void;
}

/** mm²: thicker is no wire of a machine. */
const THICKEST = 300;

function SizeField({ mm2, onSize }: SizeFieldProps) {
  const [wrong, setWrong] = useState(false);
  const type = (text: string) => {
    const size = Number(text.replace(",", ".").replace(/\s*mm(2|²)?$/i, ""));
    const fits = text === "" || (size > 0 && size <= THICKEST);
    setWrong(!fits);
    if (fits) onSize(text === "" ? null : size);
  };
  return (
    <EditField
      label="Size"
      unit="mm²"
      value={mm2 === null ? "" : String(mm2)}
      problem={wrong ? "A size in mm², as in 1.5" : null}
      onCommit={type}
      onUnchanged={() => setWrong(false)}
    />
  );
}
