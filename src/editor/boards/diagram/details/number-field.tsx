import { useState } from "react";
import { LARGEST_NUMBER, SMALLEST_NUMBER } from "../../../../job/index.ts";
import { parseFieldNumber } from "../../../../session/index.ts";
import { EditField } from "../../plug/fields.tsx";

interface NumberFieldProps {
  label: string;
  unit: string;
  value: number | undefined;
  /** Shown while nothing is entered: what the program reckons with then. */
  placeholder?: string;
  whole?: boolean;
  zero?: boolean;
  most?: number;
  /** Undefined when the field was emptied. */
  onChange: (value: number | undefined) => void;
}

const shown = (value: number | undefined) =>
  value === undefined ? "" : String(Number(value.toPrecision(6)));

/** A number typed as it comes: `12,4`, `12.4v`, `1k2`; what can't be read is told and left as it was. */
export function NumberField(props: NumberFieldProps) {
  const { label, unit, value, placeholder, whole, zero, most = LARGEST_NUMBER, onChange } = props;
  const [problem, setProblem] = useState<string | null>(null);
  const commit = (text: string) => {
    if (text === "") {
      setProblem(null);
      onChange(undefined);
      return;
    }
    const number = parseFieldNumber(text);
    const wrong =
      number === null
        ? `“${text}” is no number. Type it like 12.4 or 1k2.`
        : number < 0 || (number === 0 && !zero)
          ? "It must be above zero."
          : number > most || (number !== 0 && number < SMALLEST_NUMBER)
            ? `${number > most ? `At most ${most}` : `At least ${SMALLEST_NUMBER}`}${unit && ` ${unit}`}.`
            : whole && !Number.isInteger(number)
              ? "A whole number, please."
              : null;
    setProblem(wrong);
    if (wrong === null && number !== null) onChange(number);
  };
  return (
    <EditField
      label={label}
      unit={unit}
      value={shown(value)}
      placeholder={placeholder}
      problem={problem}
      onCommit={commit}
      onUnchanged={() => setProblem(null)}
    />
  );
}
