import { type PartKindName, ROLE_NAMES } from "../../../../job/index.ts";

/** One field of a kind as the panel offers it. */
export type KindField =
  | {
      readonly type: "number";
      readonly name: string;
      readonly label: string;
      readonly unit: string;
      /** Stored as a share of nominal, shown in percent. */
      readonly percent?: boolean;
      readonly whole?: boolean;
      /** Zero is an answer too. */
      readonly zero?: boolean;
      /** Above this the field does not take it. */
      readonly most?: number;
    }
  | { readonly type: "tick"; readonly name: string; readonly label: string }
  | {
      readonly type: "choice";
      readonly name: string;
      readonly label: string;
      /** The first, `""`, leaves the field out. */
      readonly options: readonly { readonly value: string; readonly text: string }[];
    };

const number = (
  name: string,
  label: string,
  unit: string,
  rest: { percent?: boolean; whole?: boolean; zero?: boolean; most?: number } = {},
): KindField => ({ type: "number", name, label, unit, ...rest });

const ohms = number("ohms", "Resistance", "Ω", { zero: true });

/** The fields of each kind beside id, label, place and size; pins and contacts have panels of their own. */
export const KIND_FIELDS: Readonly<Record<PartKindName, readonly KindField[]>> = {
  battery: [
    number("volts", "Volts at rest", "V", { zero: true }),
    number("ohms", "Inner resistance", "Ω", { zero: true }),
  ],
  ground: [],
  fuse: [number("amps", "Rating", "A")],
  breaker: [number("amps", "Rating", "A")],
  switch: [],
  relay: [
    number("coilOhms", "Coil", "Ω"),
    {
      type: "choice",
      name: "diodeCathode",
      label: "Diode's cathode at",
      options: [
        { value: "", text: "no diode" },
        { value: "85", text: "85" },
        { value: "86", text: "86" },
      ],
    },
    number("coilResistor", "Resistor across the coil", "Ω"),
    number("pullIn", "Pulls in at", "%", { percent: true, zero: true, most: 100 }),
    number("dropOut", "Drops out at", "%", { percent: true, zero: true, most: 100 }),
    number("contactAmps", "Contacts carry", "A"),
    number("poles", "Contact sets", "", { whole: true, most: 8 }),
    { type: "tick", name: "latching", label: "Stays as the last pulse put it" },
  ],
  lamp: [
    number("watts", "Power", "W"),
    { type: "tick", name: "led", label: "LED (1 is its anode)" },
  ],
  solenoid: [
    ohms,
    { type: "tick", name: "diode", label: "Diode, cathode at 1" },
    number("ohmsPull", "Pull winding", "Ω"),
    number("ohmsHold", "Hold winding", "Ω"),
  ],
  motor: [ohms],
  heater: [ohms],
  horn: [ohms],
  resistor: [ohms],
  sender: [
    number("ohmsMin", "Least", "Ω", { zero: true }),
    number("ohmsMax", "Most", "Ω", { zero: true }),
  ],
  potentiometer: [number("ohms", "Track", "Ω")],
  sensor: [
    {
      type: "choice",
      name: "output",
      label: "Output",
      options: [
        { value: "", text: "not known" },
        { value: "pnp", text: "switches to supply (PNP)" },
        { value: "npn", text: "switches to ground (NPN)" },
        { value: "analog", text: "voltage" },
      ],
    },
    number("volts", "Signal up to", "V", { zero: true }),
  ],
  alternator: [number("ohms", "Inner resistance", "Ω")],
  converter: [number("outVolts", "Gives out", "V")],
  diode: [],
  module: [],
  splice: [],
  inline: [],
  offpage: [
    {
      type: "choice",
      name: "is",
      label: "What lies beyond",
      options: [
        { value: "", text: "not traced" },
        ...ROLE_NAMES.map((role) => ({ value: role, text: role.replaceAll("-", " ") })),
      ],
    },
  ],
};
