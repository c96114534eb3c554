import type { Plug } from "../../../job/index.ts";
import type { MarkStyle, PhotoDot, PhotoScale, Side } from "../../../plug/index.ts";
import { Choice, FieldGroup, TextField } from "./fields.tsx";
import { MarkFields, type MarkForm } from "./mark-fields.tsx";
import type { MeasureLine } from "./photo-canvas.tsx";
import { SIDES } from "./plan-fields.tsx";
import { EMPTY_FORM, markStyleOf } from "./plan-form.ts";

/** What stands in the fields beside the photo; numbers as typed. */
export interface PhotoForm extends MarkForm {
  readonly by: PhotoScale["by"];
  readonly mm: string;
  readonly side: Side;
  readonly name: string;
}

export const photoFormOf = (plug: Plug | null): PhotoForm => ({
  marks: EMPTY_FORM.marks,
  first: EMPTY_FORM.first,
  typed: "",
  by: plug?.photo ? "before" : "pitch",
  mm: EMPTY_FORM.pitch,
  side: plug?.side ?? EMPTY_FORM.side,
  name: plug?.name ?? "",
});

/** The style of the marks that are not kept; typed ones must be enough for those. */
export function photoStyleOf(
  form: PhotoForm,
  dots: readonly PhotoDot[],
): MarkStyle | { readonly problem: string } {
  return markStyleOf(form, dots.filter((dot) => dot.mark === undefined).length);
}

export function scaleOf(
  form: PhotoForm,
  ends: MeasureLine | null,
  pixels: number,
  before: number | null,
): PhotoScale {
  const mm = Number(form.mm.replace(",", "."));
  switch (form.by) {
    case "pitch":
      return { by: "pitch", mm };
    case "points":
      return { by: "points", mm, ends };
    case "width":
      return { by: "width", mm, pixels };
    case "before":
      return { by: "before", mmPerPixel: before ?? 0 };
  }
}

const LENGTHS: readonly { readonly value: PhotoScale["by"]; readonly text: string }[] = [
  { value: "pitch", text: "first to second cavity" },
  { value: "points", text: "between two points" },
  { value: "width", text: "width of the picture" },
];

interface PhotoFieldsProps {
  form: PhotoForm;
  onForm: (form: PhotoForm) => void;
  /** Whether there is a scale from before that may stay. */
  hasBefore: boolean;
}

export function PhotoFields({ form, onForm, hasBefore }: PhotoFieldsProps) {
  const set =
    <K extends keyof PhotoForm>(field: K) =>
    (value: PhotoForm[K]) =>
      onForm({ ...form, [field]: value });
  return (
    <FieldGroup title="Marks and scale">
      <MarkFields form={form} onForm={(changed) => onForm({ ...form, ...changed })} />
      <Choice
        label="Known length"
        value={form.by}
        options={
          hasBefore ? [...LENGTHS, { value: "before", text: "scale stays as it is" }] : LENGTHS
        }
        onChange={set("by")}
      />
      {form.by !== "before" && (
        <TextField label="It measures" unit="mm" numeric value={form.mm} onChange={set("mm")} />
      )}
      <Choice label="Taken of the" value={form.side} options={SIDES} onChange={set("side")} />
      <TextField label="Name" value={form.name} onChange={set("name")} />
    </FieldGroup>
  );
}
