import { z } from "zod";
import {
  bounded,
  finite,
  idSchema,
  notNegative,
  pointSchema,
  positive,
  roleNameSchema,
} from "./shared.ts";

const share = z.number().min(0).max(1);
const pinId = z.string().min(1, "a pin needs an id");

/** Fields that every part has; `at` in pixels of the squared picture, `turn` in degrees clockwise. */
const placed = {
  id: idSchema,
  sheet: idSchema,
  at: pointSchema,
  turn: finite,
  label: z.string().optional(),
  place: z.string().optional(),
  photo: z.string().optional(),
  unit: positive
    .optional()
    .describe("pixels of the squared picture per unit of the symbol; 10 when absent"),
};

const partOf = <K extends string, S extends z.ZodRawShape>(kind: K, fields: S) =>
  z.looseObject({ kind: z.literal(kind), ...placed, ...fields });

export const CONTROLS = [
  "key",
  "isolator",
  "emergency-stop",
  "operator",
  "limit",
  "pressure",
  "temperature",
  "level",
  "interlock",
] as const;

export const modulePinSchema = z.looseObject({
  id: pinId,
  printed: z.string().optional().describe("the word beside the pin on the diagram"),
  label: z.string().optional(),
  body: z.unknown().optional(),
  at: pointSchema
    .optional()
    .describe("offset from the module's `at` in pixels before its turn; spread evenly when absent"),
});

const behaviourSchema = z.looseObject({
  paths: z.array(
    z.looseObject({
      between: z.tuple([pinId, pinId]),
      input: pinId.optional(),
      active: z.enum(["high", "low"]).optional(),
      does: z.enum(["follow", "invert", "toggle", "delay-on", "delay-off", "flash", "always"]),
      seconds: notNegative.optional(),
    }),
  ),
  loads: z.array(z.looseObject({ between: z.tuple([pinId, pinId]), ohms: positive })).optional(),
});

const twoPinLoad = { ohms: notNegative.optional() };

export const partSchema = z
  .discriminatedUnion("kind", [
    partOf("battery", { volts: notNegative.optional(), ohms: notNegative.optional() }),
    partOf("ground", {}),
    partOf("fuse", { amps: positive.optional() }),
    partOf("breaker", { amps: positive.optional() }),
    partOf("switch", {
      positions: z.array(z.string().min(1)).min(1, "a switch needs at least one position"),
      rest: z.string().optional(),
      springReturn: z.union([z.boolean(), z.array(z.string())]).optional(),
      contacts: z.array(
        z.looseObject({ between: z.tuple([pinId, pinId]), closedIn: z.array(z.string()) }),
      ),
      control: z.enum(CONTROLS),
    }),
    partOf("relay", {
      coilOhms: positive.optional(),
      diodeCathode: z.enum(["85", "86"]).optional(),
      coilResistor: positive.optional(),
      pullIn: share.optional(),
      dropOut: share.optional(),
      contactAmps: positive.optional(),
      latching: z.boolean().optional(),
      poles: z.number().int().min(1).max(8).optional().describe("contact sets; 1 when absent"),
    }),
    partOf("lamp", { watts: positive.optional(), led: z.boolean().optional() }),
    partOf("solenoid", {
      ...twoPinLoad,
      diode: z.boolean().optional(),
      ohmsPull: positive.optional(),
      ohmsHold: positive.optional(),
    }),
    partOf("motor", twoPinLoad),
    partOf("heater", twoPinLoad),
    partOf("resistor", twoPinLoad),
    partOf("horn", twoPinLoad),
    partOf("sender", { ohmsMin: notNegative.optional(), ohmsMax: notNegative.optional() }),
    partOf("potentiometer", { ohms: positive.optional() }),
    partOf("sensor", {
      output: z.enum(["pnp", "npn", "analog"]).optional(),
      volts: notNegative.optional(),
    }),
    partOf("alternator", { ohms: positive.optional() }),
    partOf("converter", { outVolts: positive.optional() }),
    partOf("diode", {}),
    partOf("module", {
      pins: z.array(modulePinSchema),
      power: z
        .looseObject({
          supply: z.array(pinId),
          ground: z.array(pinId),
          minVolts: notNegative.optional(),
        })
        .optional(),
      sources: z
        .array(
          z.looseObject({ between: z.tuple([pinId, pinId]), volts: bounded, ohms: notNegative }),
        )
        .optional()
        .describe("live when the module is powered; the first pin is the positive one"),
      behaviour: behaviourSchema.optional(),
      size: z
        .tuple([positive, positive])
        .optional()
        .describe("width and height of the drawn box, pixels of the squared picture"),
      untraced: z
        .boolean()
        .optional()
        .describe(
          "whether lines of it are still to be traced: then a pin without a wire says nothing",
        ),
    }),
    partOf("splice", {}),
    partOf("inline", { pins: z.array(z.looseObject({ id: pinId })) }),
    partOf("offpage", { label: z.string().optional(), is: roleNameSchema.optional() }),
  ])
  .meta({ id: "Part" });

export const PART_KINDS = partSchema.options.map((option) => option.shape.kind.value);
