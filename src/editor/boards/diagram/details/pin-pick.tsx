import { useMemo, useState } from "react";
import { pinsOf } from "../../../../circuit/index.ts";
import { type Id, type PinRef, pinRef, type Wire } from "../../../../job/index.ts";
import { drawnOf, moveWireEnd } from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { Choice, type ChoiceOption, EditField } from "../../plug/fields.tsx";

/** Above this many pins a list is no help and slow to make: the pin is typed instead. */
const MOST_LISTED = 400;

/** Every pin of one sheet, as options; a module's with the printed word. */
export function usePinOptions(sheet: Id | null): readonly ChoiceOption<PinRef>[] {
  const { parts } = useSelected(drawnOf).diagram;
  return useMemo(
    () =>
      parts
        .filter((part) => part.sheet === sheet)
        .flatMap((part) =>
          pinsOf(part).map((pin) => {
            const ref: PinRef = pinRef(part.id, pin.id);
            const printed =
              part.kind === "module"
                ? part.pins.find((one) => one.id === pin.id)?.printed
                : undefined;
            return { value: ref, text: [ref, printed].filter(Boolean).join(" · ") };
          }),
        ),
    [parts, sheet],
  );
}

interface PinChoiceProps {
  label: string;
  value: string;
  options: readonly ChoiceOption<string>[];
  onChange: (ref: string) => void;
}

/** A pin chosen from a list, or typed as `F1:2` where there are too many to list. */
export function PinChoice({ label, value, options, onChange }: PinChoiceProps) {
  const [wrong, setWrong] = useState<string | null>(null);
  if (options.length <= MOST_LISTED) {
    const known = options.some((option) => option.value === value);
    const all = known ? options : [{ value, text: value || "pick a pin" }, ...options];
    return <Choice label={label} value={value} options={all} onChange={onChange} />;
  }
  return (
    <EditField
      label={label}
      value={value}
      placeholder="F1:2"
      problem={wrong}
      onCommit={(text) => {
        const ref = text.trim();
        const known = options.some((option) => option.value === ref);
        setWrong(known ? null : `There is no pin ${ref} on this sheet.`);
        if (known) onChange(ref);
      }}
      onUnchanged={() => setWrong(null)}
    />
  );
}

/** One end of a wire, to be put on another pin without a pointer. */
export function PinPick({ wire, which }: { wire: Wire; which: "from" | "to" }) {
  const session = useSession();
  const sheet = useSelected((state) => state.sheet);
  const options = usePinOptions(sheet);
  return (
    <PinChoice
      label={which === "from" ? "From" : "To"}
      value={wire[which]}
      options={options}
      onChange={(ref) =>
        session.edit(`Move the end of ${wire.id}`, (draft) =>
          moveWireEnd(draft, wire.id, which, { on: "pin", ref }, wire.path ?? []),
        )
      }
    />
  );
}
