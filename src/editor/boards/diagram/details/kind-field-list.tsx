import { kindOf } from "../../../../circuit/index.ts";
import type { Part } from "../../../../job/index.ts";
import { setPartField } from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { Choice, Tick } from "../../plug/fields.tsx";
import { KIND_FIELDS, type KindField } from "./kind-fields.ts";
import { NumberField } from "./number-field.tsx";

/** The fields that only this kind of part has. */
export function KindFieldList({ part }: { part: Part }) {
  const session = useSession();
  const voltage = useSelected((state) => state.job.systemVoltage);
  const usual = kindOf(part.kind).defaults(voltage) as Readonly<Record<string, unknown>>;
  const fields = part as unknown as Readonly<Record<string, unknown>>;
  const set = (field: KindField, value: unknown) =>
    session.edit(`Set ${field.label.toLowerCase()} of ${part.id}`, (draft) =>
      setPartField(draft, part.id, field.name, value),
    );
  return KIND_FIELDS[part.kind].map((field) => {
    const value = fields[field.name];
    switch (field.type) {
      case "number": {
        const factor = field.percent ? 100 : 1;
        const otherwise = usual[field.name];
        return (
          <NumberField
            key={field.name}
            label={field.label}
            unit={field.unit}
            value={typeof value === "number" ? value * factor : undefined}
            placeholder={typeof otherwise === "number" ? String(otherwise * factor) : undefined}
            whole={field.whole}
            zero={field.zero}
            most={field.most}
            onChange={(next) => set(field, next === undefined ? undefined : next / factor)}
          />
        );
      }
      case "tick":
        return (
          <Tick
            key={field.name}
            label={field.label}
            value={value === true}
            onChange={(next) => set(field, next || undefined)}
          />
        );
      case "choice":
        return (
          <Choice
            key={field.name}
            label={field.label}
            value={typeof value === "string" ? value : ""}
            options={field.options}
            onChange={(next) => set(field, next || undefined)}
          />
        );
    }
    return null;
  });
}
