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

/** Beyond these a reckoning ends in no number at all; nothing on a machine comes near either. */
export const LARGEST_NUMBER = 1e12;
export const SMALLEST_NUMBER = 1e-12;
const TOO_LARGE = "may be at most 1e12: correct it";
const TOO_SMALL = "is too small to be meant: write 0, or at least 1e-12";
/** What the schema says of a number that is out of these bounds. */
export const OUT_OF_BOUNDS: ReadonlySet<string> = new Set([TOO_LARGE, TOO_SMALL]);

const isLargeEnough = (value: number) => value <= 0 || value >= SMALLEST_NUMBER;

export const finite = z.number();
/** Volts of either sign. */
export const bounded = z.number().min(-LARGEST_NUMBER, TOO_LARGE).max(LARGEST_NUMBER, TOO_LARGE);
export const notNegative = z
  .number()
  .min(0, "may not be negative")
  .max(LARGEST_NUMBER, TOO_LARGE)
  .refine(isLargeEnough, TOO_SMALL);
export const positive = z
  .number()
  .positive("must be above zero")
  .max(LARGEST_NUMBER, TOO_LARGE)
  .refine(isLargeEnough, TOO_SMALL);
export const pointSchema = z.tuple([finite, finite]).meta({ id: "Point" });

const colourCodeSchema = z.enum(COLOUR_CODES).meta({ id: "ColourCode" });

export const colourSchema = z
  .looseObject({
    base: colourCodeSchema.describe("IEC 60757 code of the insulation"),
    tracer: colourCodeSchema.optional().describe("IEC 60757 code of the thin stripe"),
  })
  .meta({ id: "Colour" });
