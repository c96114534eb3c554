import { Choice, Choices, FieldGroup, TextField, Tick } from "./fields.tsx";
import { MarkFields } from "./mark-fields.tsx";
import { type ArrangementKind, type PlanForm, withKind } from "./plan-form.ts";

interface PlanFieldsProps {
  form: PlanForm;
  onForm: (form: PlanForm) => void;
}

type Setter = <K extends keyof PlanForm>(field: K) => (value: PlanForm[K]) => void;

const KINDS: readonly { value: ArrangementKind; text: string }[] = [
  { value: "grid", text: "Rows and columns" },
  { value: "staggered", text: "Staggered rows" },
  { value: "rings", text: "Rings" },
  { value: "relay", text: "Relay socket" },
  { value: "free", text: "One by one" },
];

const EDGES = [
  { value: "none", text: "none" },
  { value: "top", text: "top" },
  { value: "right", text: "right" },
  { value: "bottom", text: "bottom" },
  { value: "left", text: "left" },
] as const;

export const SIDES = [
  { value: "mating", text: "mating side" },
  { value: "wire", text: "wire side" },
] as const;

export const HOLDS = [
  { value: "", text: "not said" },
  { value: "pins", text: "pins" },
  { value: "sockets", text: "sockets" },
] as const;

/** How marks run over rows, and round a ring. */
export const GRID_RUNS = [
  { value: "across", text: "across" },
  { value: "down", text: "down" },
  { value: "serpentine", text: "to and fro" },
] as const;
export const RING_TURNS = [
  { value: "clockwise", text: "clockwise" },
  { value: "anticlockwise", text: "anticlockwise" },
] as const;

/** Everything that can be said about a face, those fields first that change its look most. */
export function PlanFields({ form, onForm }: PlanFieldsProps) {
  const set: Setter = (field) => (value) => onForm({ ...form, [field]: value });
  return (
    <>
      <Choices
        label="Arrangement"
        value={form.kind}
        options={KINDS}
        onChange={(kind) => onForm(withKind(form, kind))}
      />
      {form.kind !== "free" && (
        <FieldGroup title="Cavities">
          <ArrangementFields form={form} set={set} />
        </FieldGroup>
      )}
      {form.kind !== "free" && (
        <FieldGroup title="Marks">
          <MarkFields form={form} onForm={(changed) => onForm({ ...form, ...changed })} />
          <OrderFields form={form} set={set} />
        </FieldGroup>
      )}
      <FieldGroup title="Housing">
        <Choice
          label="Shape"
          value={form.housing}
          options={[
            { value: "rectangle", text: "rectangle" },
            { value: "circle", text: "circle" },
          ]}
          onChange={set("housing")}
        />
        <Choice label="Latch" value={form.latch} options={EDGES} onChange={set("latch")} />
        <Choice label="Key" value={form.key} options={EDGES} onChange={set("key")} />
        <Choice label="Drawn from the" value={form.side} options={SIDES} onChange={set("side")} />
        <Choice label="Holds" value={form.holds} options={HOLDS} onChange={set("holds")} />
        <TextField label="Name" value={form.name} onChange={set("name")} />
      </FieldGroup>
      <Tick
        label="Only the marks are known, not where they lie"
        value={form.neutral}
        onChange={set("neutral")}
      />
    </>
  );
}

function ArrangementFields({ form, set }: { form: PlanForm; set: Setter }) {
  const pitch = (
    <TextField label="Pitch" unit="mm" numeric value={form.pitch} onChange={set("pitch")} />
  );
  switch (form.kind) {
    case "rings":
      return (
        <>
          <TextField
            label="Cavities in each ring"
            hint="outermost first, as in 10 5"
            value={form.rings}
            onChange={set("rings")}
          />
          {pitch}
          <TextField
            label="First cavity at"
            unit="° from the top"
            numeric
            value={form.ringFrom}
            onChange={set("ringFrom")}
          />
          <Tick label="One in the middle" value={form.centre} onChange={set("centre")} />
        </>
      );
    case "relay":
      return (
        <Choice
          label="Layout"
          value={form.layout}
          options={[
            { value: "30-below", text: "30 below, 86 at the side" },
            { value: "86-below", text: "86 below, 30 at the side" },
          ]}
          onChange={set("layout")}
        />
      );
    default:
      return (
        <>
          <TextField label="Rows" numeric value={form.rows} onChange={set("rows")} />
          <TextField label="Columns" numeric value={form.columns} onChange={set("columns")} />
          {pitch}
          <TextField
            label="Row to row"
            unit="mm"
            numeric
            value={form.rowPitch}
            onChange={set("rowPitch")}
          />
          {form.kind === "staggered" && (
            <Choice
              label="Second row"
              value={form.shift}
              options={[
                { value: "right", text: "half a pitch right" },
                { value: "left", text: "half a pitch left" },
                { value: "nested", text: "between, one fewer" },
              ]}
              onChange={set("shift")}
            />
          )}
        </>
      );
  }
}

/** In which order the cavities get their marks. */
function OrderFields({ form, set }: { form: PlanForm; set: Setter }) {
  return (
    <>
      {(form.kind === "grid" || form.kind === "staggered") && (
        <>
          <Choice label="Run" value={form.run} options={GRID_RUNS} onChange={set("run")} />
          <Choice
            label="Start"
            value={form.start}
            options={[
              { value: "top-left", text: "top left" },
              { value: "top-right", text: "top right" },
              { value: "bottom-left", text: "bottom left" },
              { value: "bottom-right", text: "bottom right" },
            ]}
            onChange={set("start")}
          />
        </>
      )}
      {form.kind === "rings" && (
        <>
          <Choice label="Run" value={form.turn} options={RING_TURNS} onChange={set("turn")} />
          <Choice
            label="Rings"
            value={form.ringOrder}
            options={[
              { value: "outer-first", text: "outermost first" },
              { value: "inner-first", text: "innermost first" },
            ]}
            onChange={set("ringOrder")}
          />
        </>
      )}
    </>
  );
}
