import type { CavityRef, Job, PinRef, RoleName } from "../../../src/job/index.ts";
import type { Side } from "./words.ts";

/** What a pin does inside its module, which no diagram shows and the true machine has. */
export type Inside =
  | "feed"
  | "ground"
  | "input-high"
  | "input-low"
  | "output-high"
  | "output-low"
  | "sensor-supply"
  | "sensor-ground"
  | "signal"
  | "nothing";

/** One pin of a module with all that is true of it by the way the job was made. */
export interface TruePin {
  readonly pin: PinRef;
  /** Null for a pin that is tied to no cavity because there is nothing to tie. */
  readonly cavity: CavityRef | null;
  /** What the published page of roles says that fits. */
  readonly fits: readonly RoleName[];
  readonly side: Side;
  readonly inside: Inside;
  /** Whether the pin's line is of a kind that a test lamp may be held to. */
  readonly bearsLamp: boolean;
  /** Whether an ohmmeter there sees nothing but wires, contacts, windings and filaments. */
  readonly isOhmic: boolean;
}

/** A load fed by no module, with the wires that feed it and lead it back. */
export interface FreeLoad {
  readonly part: string;
  readonly fuse: string;
  /** Whether the key's own fuse lies before that one, beside the main fuse. */
  readonly isKeyed: boolean;
  readonly feedWire: string;
  readonly returnWire: string;
}

/** A whole job that is right, beside the truth that it was made from. */
export interface PaperJob {
  readonly job: Job;
  readonly pins: readonly TruePin[];
  readonly freeLoads: readonly FreeLoad[];
  /** A pin on the fused line that the key makes live; size of wires that may hang on it. */
  readonly keyBus: { readonly pin: PinRef; readonly mm2: number };
  readonly mainBus: { readonly pin: PinRef; readonly mm2: number };
}

export const pinsOfModule = ({ pins }: PaperJob, module: string): readonly TruePin[] =>
  pins.filter(({ pin }) => pin.startsWith(`${module}:`));

export const modulesOf = ({ pins }: PaperJob): readonly string[] => [
  ...new Set(pins.map(({ pin }) => pin.slice(0, pin.indexOf(":")))),
];
