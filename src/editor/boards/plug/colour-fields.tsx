import { useState } from "react";
import type { Colour } from "../../../job/index.ts";
import {
  type ColourCode,
  formatColour,
  nameColour,
  parseColour,
  readColours,
  whyNoColour,
} from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./colour-fields.module.css";
import { ColourPicker } from "./colour-picker.tsx";
import { ColourSwatch } from "./colour-swatch.tsx";
import { EditField } from "./fields.tsx";

interface ColourFieldsProps {
  colour: Colour | null;
  /** What it says while there is none, e.g. `not seen yet`. */
  none: string;
  onChange: (colour: Colour | null) => void;
}

/** A wire's colour, picked from the list or typed. */
export function ColourFields({ colour, none, onChange }: ColourFieldsProps) {
  /** What was typed last, where it can't be taken as it is. */
  const [unread, setUnread] = useState("");
  const pickBase = (base: ColourCode | null) => {
    const tracer = colour?.tracer && colour.tracer !== base ? { tracer: colour.tracer } : {};
    onChange(base ? { base, ...tracer } : null);
  };
  const pickTracer = (tracer: ColourCode | null) => {
    if (colour) onChange(tracer ? { base: colour.base, tracer } : { base: colour.base });
  };
  const type = (text: string) => {
    const typed = text === "" ? null : parseColour(text);
    setUnread(text !== "" && !typed ? text : "");
    if (text === "" || typed) onChange(typed);
  };
  const choose = (one: Colour) => {
    setUnread("");
    onChange(one);
  };
  return (
    <fieldset className={styles.colour}>
      <legend>
        Colour <ColourSwatch colour={colour} />{" "}
        {colour ? `${formatColour(colour)}, ${nameColour(colour)}` : none}
      </legend>
      <ColourPicker label="Base" value={colour?.base ?? null} none="no colour" onPick={pickBase} />
      {colour && (
        <ColourPicker
          label="Tracer, the thin stripe"
          value={colour.tracer ?? null}
          none="no tracer"
          except={colour.base}
          onPick={pickTracer}
        />
      )}
      <div className={styles.typed}>
        <EditField
          label="or type it"
          value={colour ? formatColour(colour) : ""}
          placeholder="BNBK"
          problem={unread === "" ? null : whyNoColour(unread)}
          onCommit={type}
          onUnchanged={() => setUnread("")}
        />
        {unread !== "" && (
          <div className={styles.meant}>
            {readColours(unread).map((one) => (
              <Button
                key={formatColour(one)}
                icon={<ColourSwatch colour={one} />}
                onClick={() => choose(one)}
              >
                {formatColour(one)}
              </Button>
            ))}
          </div>
        )}
      </div>
    </fieldset>
  );
}
