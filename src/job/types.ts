import type { z } from "zod";
import type * as job from "./schema/job.ts";
import type { CONTROLS, modulePinSchema, partSchema } from "./schema/parts.ts";
import type { colourSchema } from "./schema/shared.ts";

/** The named fields only: unknown ones are kept in the data but are nobody's business in code. */
export type Known<T> = T extends readonly (infer E)[]
  ? number extends T["length"]
    ? Known<E>[]
    : { [I in keyof T]: Known<T[I]> }
  : T extends object
    ? { [K in keyof T as string extends K ? never : K]: Known<T[K]> }
    : T;

type Shape<S extends z.ZodType> = Known<z.infer<S>>;

export type { RoleName } from "./schema/shared.ts";
export type Id = string;
export type PinId = string;
/** `part:pin` */
export type PinRef = string;
/** `plug:mark` */
export type CavityRef = string;
/** A PinRef, a CavityRef, `battery+`, `battery-` or `chassis`. */
export type Probe = string;
export type Position = string;

export type Job = Shape<typeof job.jobSchema>;
export type Sheet = Shape<typeof job.sheetSchema>;
export type SheetSquaring = Shape<typeof job.squaringSchema>;
export type SheetCleanStep = Shape<typeof job.cleanStepSchema>;
export type LineAnswer = NonNullable<Sheet["answers"]>[number];
export type Part = Shape<typeof partSchema>;
export type PartKindName = Part["kind"];
export type PartOf<K extends PartKindName> = Extract<Part, { kind: K }>;
export type ModulePin = Shape<typeof modulePinSchema>;
export type Control = (typeof CONTROLS)[number];
export type Wire = Shape<typeof job.wireSchema>;
export type Colour = Shape<typeof colourSchema>;
export type Plug = Shape<typeof job.plugSchema>;
export type Cavity = Shape<typeof job.cavitySchema>;
export type PlugOutline = Shape<typeof job.outlineSchema>;
export type PlugKey = Shape<typeof job.keySchema>;
export type Link = Job["links"][number];
export type Machine = Shape<typeof job.machineSchema>;
export type MachineWire = Shape<typeof job.machineWireSchema>;
/** When as stored; `switches` maps a switch's id to its position. */
export type When = Shape<typeof job.whenSchema> & { switches?: Record<Id, Position> | undefined };
export type Reading = Omit<Shape<typeof job.readingSchema>, "when"> & { when: When };
export type ReadingQuantity = Reading["quantity"];
export type Trial = Machine["trials"][number];
export type FirstCheck = Shape<typeof job.firstCheckSchema>;
export type Step = Shape<typeof job.stepSchema>;
export type Recording = NonNullable<Machine["recordings"]>[number];
export type AdoptedRole = Shape<typeof job.adoptedRoleSchema>;
export type SetAside = Shape<typeof job.setAsideSchema>;
/** What the user chose to hold wires and fuses against. */
export type Conductors = NonNullable<Job["conductors"]>;
export type StandIn = NonNullable<Job["standIns"]>[number];
