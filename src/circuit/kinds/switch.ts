import type { PartOf, PinId, Position } from "../../job/index.ts";
import type { PartKind } from "./kind.ts";
import { drawSwitch, switchPins } from "./switch-layout.ts";

/** Where it lies when nobody touches it. */
export const restPosition = (part: PartOf<"switch">): Position | undefined =>
  part.rest ?? part.positions[0];

/** Positions that the switch leaves by itself when let go. */
export function springPositions(part: PartOf<"switch">): readonly Position[] {
  if (Array.isArray(part.springReturn)) return part.springReturn;
  const rest = restPosition(part);
  return part.springReturn ? part.positions.filter((position) => position !== rest) : [];
}

export const switchKind: PartKind<"switch"> = {
  kind: "switch",
  title: "switch",
  letter: "S",
  defaults: () => ({
    positions: ["off", "on"],
    rest: "off",
    contacts: [{ between: ["1", "2"] as [PinId, PinId], closedIn: ["on"] }],
    control: "operator" as const,
  }),
  pins: switchPins,
  elements: (part) =>
    part.contacts.map(({ between: [a, b], closedIn }) => ({
      part: part.id,
      a,
      b,
      law: {
        is: "contact" as const,
        control: part.control,
        closedIn,
        springPositions: springPositions(part),
      },
    })),
  failures: [
    { mode: "stuck-open", in: "every-element", strikes: "one", becomes: "open" },
    { mode: "stuck-closed", in: "every-element", strikes: "one", becomes: "joined" },
    { mode: "high-resistance", in: "every-element", strikes: "one", becomes: "extra-ohms" },
    { mode: "leaky", in: "every-element", strikes: "one", becomes: "leak" },
  ],
  draw: (part) => drawSwitch(part, restPosition(part)),
};
