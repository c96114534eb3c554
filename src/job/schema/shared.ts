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
export const roleNameSchema = z.enum(ROLE_NAMES);
export type RoleName = z.infer<typeof roleNameSchema>;

/** An id is unique across the whole job and holds no colon, so that a reference is never ambiguous. */
export const idSchema = z
  .string()
  .min(1, "an id may not be empty")
  .max(200, "an id may have at most 200 characters")
  .regex(/^[^:]*$/, "an id may not hold a colon");

/** `part:pin` */
export const pinRefSchema = z.string().regex(/^[^:]+:.+$/s, 'write it as "part:pin"');
/** `plug:mark` */
export const cavityRefSchema = z.string().regex(/^[^:]+:.+$/s, 'write it as "plug:mark"');
/** A pin, a cavity, `battery+`, `battery-` or `chassis`. */
export const probeSchema = z
  .string()
  .regex(
    /^([^:]+:.+|battery[+-]|chassis)$/s,
    'write it as "part:pin", "plug:mark", "battery+", "battery-" or "chassis"',
  );

export const finite = z.number();
export const notNegative = z.number().min(0, "may not be negative");
export const positive = z.number().positive("must be above zero");
export const pointSchema = z.tuple([finite, finite]);

export const colourSchema = z.looseObject({
  base: z.enum(COLOUR_CODES).describe("IEC 60757 code of the insulation"),
  tracer: z.enum(COLOUR_CODES).optional().describe("IEC 60757 code of the thin stripe"),
});
