import { z } from "zod";
import { conductorsSchema } from "./conductors.ts";
import { partSchema } from "./parts.ts";
import {
  cavityRefSchema,
  colourSchema,
  finite,
  idSchema,
  notNegative,
  pinRefSchema,
  pointSchema,
  positive,
  probeSchema,
  roleNameSchema,
} from "./shared.ts";

export const JOB_FORMAT = "pintruth-job";
export const JOB_VERSION = 1;
/** Above this the trade and its dangers are another one. */
export const HIGHEST_SYSTEM_VOLTAGE = 60;

const imageSchema = z
  .looseObject({
    file: z.string().min(1).describe("path inside the job's own folder or archive"),
    width: positive.describe("pixels"),
    height: positive.describe("pixels"),
  })
  .meta({ id: "Image" });

/** How a picture became the sheet's, in this order of fields; see `docs/job-format.md`. */
export const squaringSchema = z
  .looseObject({
    bow: finite.optional().describe("k of the lens's bow; 0 when absent"),
    margin: notNegative.optional().describe("pixels shown beyond the corners"),
    level: finite.optional().describe("degrees clockwise"),
    quarters: z.union([z.literal(1), z.literal(2), z.literal(3)]).optional(),
    mirrored: z.boolean().optional(),
    crop: z
      .looseObject({ left: finite, top: finite, right: finite, bottom: finite })
      .optional()
      .describe("what is kept, pixels after all that stands before, edges inside"),
  })
  .meta({ id: "Squaring" });

export const cleanStepSchema = z
  .discriminatedUnion("does", [
    z.looseObject({ does: z.literal("flatten") }),
    z.looseObject({ does: z.literal("contrast"), black: finite, white: finite }),
    z.looseObject({ does: z.literal("black-and-white"), window: positive, k: finite }),
    z.looseObject({ does: z.literal("specks"), largest: positive }),
    z.looseObject({ does: z.literal("bleed-through"), sure: finite }),
    z.looseObject({
      does: z.literal("inks"),
      keep: z.array(z.enum(["black", "red", "blue", "other"])).min(1),
    }),
  ])
  .meta({ id: "CleanStep" });

export const sheetSchema = z
  .looseObject({
    id: idSchema,
    title: z.string().optional(),
    image: imageSchema.optional(),
    corners: z
      .tuple([pointSchema, pointSchema, pointSchema, pointSchema])
      .optional()
      .describe("in pixels of the original picture, clockwise from top left"),
    original: imageSchema
      .optional()
      .describe("the picture as it came, where `image` was made from it; else `image` is it"),
    squaring: squaringSchema.optional(),
    cleaning: z.array(cleanStepSchema).optional().describe("steps taken after squaring, in order"),
    answers: z
      .array(
        z.looseObject({
          at: pointSchema,
          joined: z.boolean(),
          stray: z
            .boolean()
            .optional()
            .describe(
              "what is there is no line, from one joint or end to the next; not joined then",
            ),
        }),
      )
      .optional()
      .describe("what the user said of doubtful places of lines, pixels of the squared picture"),
  })
  .meta({ id: "Sheet" });

export const wireSchema = z
  .looseObject({
    id: idSchema,
    from: pinRefSchema,
    to: pinRefSchema,
    number: z.string().optional(),
    colour: colourSchema.optional(),
    mm2: positive.optional(),
    awg: finite.optional(),
    metres: positive.optional(),
    path: z.array(pointSchema).optional().describe("corners between the two ends, pixels"),
  })
  .meta({ id: "Wire" });

export const cavitySchema = z
  .looseObject({
    mark: z.string().min(1, "a cavity needs a mark"),
    at: pointSchema.describe("millimetres as seen from `side`, x right, y down"),
    empty: z.boolean().optional(),
    blocked: z.boolean().optional(),
    opening: z
      .enum(["round", "blade-across", "blade-upright"])
      .optional()
      .describe("shape of the hole; round when absent"),
  })
  .meta({ id: "Cavity" });

export const outlineSchema = z.discriminatedUnion("shape", [
  z.looseObject({
    shape: z.literal("rectangle"),
    at: pointSchema.describe("top left, millimetres"),
    width: positive,
    height: positive,
    radius: notNegative.optional(),
  }),
  z.looseObject({
    shape: z.literal("circle"),
    at: pointSchema.describe("centre, millimetres"),
    radius: positive,
  }),
  z.looseObject({ shape: z.literal("polygon"), points: z.array(pointSchema).min(3) }),
]);

export const keySchema = z
  .looseObject({
    kind: z.enum(["latch", "key"]),
    at: pointSchema.describe("centre, millimetres"),
    width: positive,
    height: positive,
    turn: finite.optional(),
  })
  .meta({ id: "PlugKey" });

export const plugSchema = z
  .looseObject({
    id: idSchema,
    name: z.string().optional(),
    side: z.enum(["mating", "wire"]).describe("the side that `at` was drawn from"),
    holds: z.enum(["pins", "sockets"]).optional(),
    cavities: z.array(cavitySchema),
    outline: outlineSchema.optional(),
    keys: z.array(keySchema).optional(),
    neutral: z
      .boolean()
      .optional()
      .describe("whether the places are a neutral drawing, of which only the marks are known"),
    photo: z
      .looseObject({
        ...imageSchema.shape,
        at: pointSchema.describe("where the picture's top left lies, millimetres"),
        mmPerPixel: positive,
      })
      .optional(),
  })
  .meta({ id: "Plug" });

export const ENGINE_STATES = ["off", "cranking", "running"] as const;

export const whenSchema = z
  .looseObject({
    switches: z.record(z.string(), z.string()).optional(),
    unplugged: z.array(z.string()).optional(),
    removed: z.array(z.string()).optional(),
    standIn: z.string().optional(),
    engine: z.enum(ENGINE_STATES).optional(),
  })
  .meta({ id: "When" });

export const readingSchema = z
  .looseObject({
    id: idSchema,
    quantity: z.enum(["volts", "ohms", "amps", "drop"]),
    red: probeSchema,
    black: probeSchema,
    value: z.union([finite, z.literal("OL")]),
    when: whenSchema,
    with: z.enum(["meter", "test-lamp"]).optional(),
    at: z.string().optional().describe("ISO 8601 date and time"),
    note: z.string().optional(),
  })
  .meta({ id: "Reading" });

/** Something a person does to the machine, or lets happen, while the circuit is played through. */
export const stepSchema = z
  .discriminatedUnion("do", [
    z.looseObject({
      do: z
        .literal("turn")
        .describe("press, turn or move; it stays there until something moves it"),
      switch: z.string(),
      position: z.string(),
    }),
    z.looseObject({
      do: z
        .literal("release")
        .describe(
          "let go: from a spring position it falls back towards rest, to the first that it stays in",
        ),
      switch: z.string(),
    }),
    z.looseObject({ do: z.literal("wait"), seconds: positive }),
    z.looseObject({ do: z.enum(["unplug", "plug"]), id: z.string() }),
    z.looseObject({
      do: z.enum(["remove", "fit"]).describe("fitting a blown fuse replaces it"),
      id: z.string(),
    }),
    z.looseObject({ do: z.literal("engine"), engine: z.enum(ENGINE_STATES) }),
  ])
  .meta({ id: "Step" });

const recordingSchema = z
  .looseObject({ id: idSchema, name: z.string(), steps: z.array(stepSchema) })
  .meta({ id: "Recording" });

/** What is done before any reading counts; kept with the machine and used for the bands. */
export const FIRST_CHECKS = [
  "battery-at-rest",
  "battery-under-load",
  "meter-before",
  "meter-after",
  "leads-together",
] as const;

export const firstCheckSchema = z
  .looseObject({
    id: idSchema,
    check: z.enum(FIRST_CHECKS),
    value: finite.describe("volts; ohms for leads-together"),
    known: finite.optional().describe("volts of the known source that proves the meter"),
    celsius: finite.optional().describe("of the battery; 26.7 when absent"),
    at: z.string().optional().describe("ISO 8601 date and time"),
    note: z.string().optional(),
  })
  .meta({ id: "FirstCheck" });

const trialSchema = z
  .looseObject({
    id: idSchema,
    when: whenSchema,
    saw: z.array(z.looseObject({ part: z.string(), state: z.enum(["on", "off"]) })),
    note: z.string().optional(),
  })
  .meta({ id: "Trial" });

export const machineWireSchema = z
  .looseObject({
    cavity: cavityRefSchema,
    colour: colourSchema.optional(),
    number: z.string().optional(),
    mm2: positive.optional(),
    note: z.string().optional(),
  })
  .meta({ id: "MachineWire" });

export const machineSchema = z
  .looseObject({
    id: idSchema,
    name: z.string(),
    serial: z.string().optional(),
    hours: notNegative.optional(),
    wires: z.array(machineWireSchema),
    changes: z
      .array(
        z.looseObject({
          without: z.array(z.string()).optional(),
          parts: z.array(partSchema).optional(),
          wires: z.array(wireSchema).optional(),
          note: z.string(),
        }),
      )
      .optional(),
    readings: z.array(readingSchema),
    trials: z.array(trialSchema),
    firstChecks: z.array(firstCheckSchema).optional(),
    recordings: z
      .array(recordingSchema)
      .optional()
      .describe("plays of the circuit, to be repeated"),
  })
  .meta({ id: "Machine" });

export const adoptedRoleSchema = z
  .looseObject({
    pin: pinRefSchema,
    role: roleNameSchema.describe("what the sheet prints as the pin's role"),
    machine: z.string().optional().describe("counts on this machine only; on all when absent"),
  })
  .meta({ id: "AdoptedRole" });

export const setAsideSchema = z
  .looseObject({
    rule: z.string(),
    subjects: z.array(z.string()),
    machine: z.string().optional().describe("counts on this machine only; on all when absent"),
    message: z.string().describe("what the finding said when it was set aside"),
    because: z.array(z.string()).optional().describe("the path that proved it then"),
    reason: z.string(),
    at: z.string().optional().describe("ISO 8601 date and time"),
  })
  .meta({ id: "SetAside" });

const standInSchema = z
  .looseObject({
    id: idSchema,
    kind: z.enum(["relay", "switch", "jumper"]),
    replaces: z.string(),
    map: z.array(z.looseObject({ cavity: cavityRefSchema, terminal: z.string() })),
  })
  .meta({ id: "StandIn" });

export const jobSchema = z.looseObject({
  format: z.literal(JOB_FORMAT),
  version: z.literal(JOB_VERSION),
  title: z.string(),
  systemVoltage: positive
    .max(
      HIGHEST_SYSTEM_VOLTAGE,
      `above ${HIGHEST_SYSTEM_VOLTAGE} V is not this tool's trade: leave it to people qualified for it`,
    )
    .describe("nominal volts"),
  conductors: conductorsSchema.optional(),
  diagram: z.looseObject({
    sheets: z.array(sheetSchema),
    parts: z.array(partSchema),
    wires: z.array(wireSchema),
  }),
  plugs: z.array(plugSchema),
  links: z.array(z.looseObject({ pin: pinRefSchema, cavity: cavityRefSchema })),
  machines: z.array(machineSchema),
  standIns: z.array(standInSchema).optional(),
  words: z.array(z.looseObject({ printed: z.string(), role: roleNameSchema })).optional(),
  adopted: z
    .array(adoptedRoleSchema)
    .optional()
    .describe("roles taken from the circuit in place of the printed word"),
  setAside: z.array(setAsideSchema).optional().describe("findings looked at and set aside"),
});
