import { z } from "zod";
import { COLOUR_CODES } from "../../standards/index.ts";

/** What a pin is for. `undecided` is never stored: it stands for "more than one fits". */
export const ROLE_NAMES = [
  "supply",
  "switched-supply",
  "ground",
  "switched-ground",
  "input",
  "output",
  "sensor-supply",
  "sensor-ground",
  "signal",
  "unused",
] as const;
export const roleNameSchema = z.enum(ROLE_NAMES).meta({ id: "RoleName" });
export type RoleName = z.infer<typeof roleNameSchema>;

/** An id is unique across the whole job and holds no colon, so that a reference is never ambiguous. */
export const idSchema = z
  .string()
  .min(1, "an id may not be empty")
  .max(200, "an id may have at most 200 characters")
  .regex(/^[^:]*$/, "an id may not hold a colon")
  // Such an id would be found in every object that is used as a lookup.
  .refine(
    (id) => !(id in Object.prototype),
    "programs keep that word for themselves: choose another id",
  );

/** `part:pin` */
export const pinRefSchema = z
  .string()
  .regex(/^[^:]+:[\s\S]+$/, 'write it as "part:pin"')
  .meta({ id: "PinRef" });
/** `plug:mark` */
export const cavityRefSchema = z
  .string()
  .regex(/^[^:]+:[\s\S]+$/, 'write it as "plug:mark"')
  .meta({ id: "CavityRef" });
/** A pin, a cavity, `battery+`, `battery-` or `chassis`. */
export const probeSchema = z
  .string()
  .regex(
    /^([^:]+:[\s\S]+|battery[+-]|chassis)$/,
    'write it as "part:pin", "plug:mark", "battery+", "battery-" or "chassis"',
  )
  .meta({ id: "Probe" });

export const finite = z.number();
export const notNegative = z.number().min(0, "may not be negative");
export const positive = z.number().positive("must be above zero");
export const pointSchema = z.tuple([finite, finite]).meta({ id: "Point" });

const colourCodeSchema = z.enum(COLOUR_CODES).meta({ id: "ColourCode" });

export const colourSchema = z
  .looseObject({
    base: colourCodeSchema.describe("IEC 60757 code of the insulation"),
    tracer: colourCodeSchema.optional().describe("IEC 60757 code of the thin stripe"),
  })
  .meta({ id: "Colour" });
