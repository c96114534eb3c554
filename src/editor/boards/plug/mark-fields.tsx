import { Choice, TextField } from "./fields.tsx";
import type { MarkKind } from "./plan-form.ts";

/** What says how cavities are marked; the numbers as typed. */
export interface MarkForm {
  readonly marks: MarkKind;
  readonly first: string;
  readonly typed: string;
}

const MARKS: readonly { value: MarkKind; text: string }[] = [
  { value: "numbers", text: "1, 2, 3 …" },
  { value: "letters", text: "A, B, C …" },
  { value: "clear-letters", text: "letters without I, O, Q" },
  { value: "typed", text: "as typed" },
];

interface MarkFieldsProps {
  form: MarkForm;
  onForm: (changed: Partial<MarkForm>) => void;
}

/** Which marks the cavities get, whatever the order in which they get them. */
export function MarkFields({ form, onForm }: MarkFieldsProps) {
  return (
    <>
      <Choice
        label="Marks"
        value={form.marks}
        options={MARKS}
        onChange={(marks) => onForm({ marks })}
      />
      {form.marks === "numbers" && (
        <TextField
          label="First number"
          numeric
          value={form.first}
          onChange={(first) => onForm({ first })}
        />
      )}
      {form.marks === "typed" && (
        <TextField
          label="Marks in order"
          hint="apart by spaces or commas"
          wide
          value={form.typed}
          onChange={(typed) => onForm({ typed })}
        />
      )}
    </>
  );
}
