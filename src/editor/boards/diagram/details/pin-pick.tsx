import { useMemo } from "react";
import { pinsOf } from "../../../../circuit/index.ts";
import { type PinRef, pinRef, type Wire } from "../../../../job/index.ts";
import { moveWireEnd } from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { Choice } from "../../plug/fields.tsx";

/** Every pin of one sheet, as options; a module's with the printed word. */
export function usePinOptions(sheet: string | null) {
  const parts = useSelected((state) => state.job.diagram.parts);
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

/** One end of a wire, to be put on another pin without a pointer. */
export function PinPick({ wire, which }: { wire: Wire; which: "from" | "to" }) {
  const session = useSession();
  const sheet = useSelected((state) => state.sheet);
  const options = usePinOptions(sheet);
  const here = wire[which];
  const known = options.some((option) => option.value === here);
  return (
    <Choice
      label={which === "from" ? "From" : "To"}
      value={here}
      options={known ? options : [{ value: here, text: here }, ...options]}
      onChange={(ref) =>
        session.edit(`Move the end of ${wire.id}`, (draft) =>
          moveWireEnd(draft, wire.id, which, { on: "pin", ref }, wire.path ?? []),
        )
      }
    />
  );
}
