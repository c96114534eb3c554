import type { Colour } from "../job/index.ts";
import type { FaceView } from "../plug/index.ts";
import type { Verdict } from "../roles/index.ts";
import type { CavityState } from "./cavity-facts.ts";

export type PaperSize = "A4" | "Letter";

/** One pinout sheet as data: everything that is printed, nothing of how. */
export interface SheetModel {
  readonly size: PaperSize;
  /** `Plug X1`, with its name where it has one. */
  readonly heading: string;
  /** The module or modules that the plug belongs to; empty when nothing is tied yet. */
  readonly modules: string;
  readonly job: string;
  /** Nominal volts. */
  readonly systemVoltage: number;
  readonly machine: {
    readonly name: string;
    readonly serial: string | null;
    readonly hours: number | null;
  };
  /** `14 Nov 2025` */
  readonly date: string;
  readonly revision: string;
  readonly preparedBy: string;
  readonly side: "mating" | "wire";
  /** `Seen from the wire side` and what that means. */
  readonly sideWords: string;
  readonly face: FaceView;
  /** One a cavity, in the plug's order. */
  readonly rows: readonly SheetRow[];
  /**
   * Phrases of the conditions that every expected reading shares, and every taken one that does not
   * say otherwise: said once, under the table.
   */
  readonly sharedSetup: readonly string[];
  readonly contradictions: readonly SheetStatement[];
  readonly warnings: readonly SheetStatement[];
  /** Findings that the user set aside: those about this plug, each with the reason, and how many others. */
  readonly setAside: {
    readonly here: readonly SetAsideStatement[];
    readonly elsewhere: number;
  };
  /** Findings of the job that are on neither list, so that none is left out in silence. */
  readonly unshown: {
    /** Lesser notes about this plug. */
    readonly notes: number;
    /** Whatever is about other places. */
    readonly elsewhere: number;
  };
  /** How much of this is proved, in one honest sentence. */
  readonly standing: string;
  readonly cautions: readonly string[];
  readonly whoComesFirst: string;
}

export interface SheetStatement {
  /** Marks of the cavities it is about, as printed before the message; may be empty. */
  readonly marks: string;
  readonly message: string;
}

export interface SetAsideStatement extends SheetStatement {
  /** As the user gave it; may be long. */
  readonly reason: string;
}

export interface SheetRow {
  readonly mark: string;
  /** `A1:4`; several joined by a comma; empty when nothing is tied. */
  readonly pin: string;
  readonly state: CavityState;
  /** Empty when the diagram prints no word. */
  readonly printed: string;
  /** The circuit contradicts the printed word. */
  readonly wrong: boolean;
  /** What the cavity is, as the circuit says it, or as the user adopted it. */
  readonly is: string;
  /** The user took the circuit's role in place of the printed word. */
  readonly adopted: boolean;
  /** Parts on the path that shows it, from the pin outward. */
  readonly by: string;
  readonly verdict: Verdict | null;
  readonly colour: Colour | null;
  /** `BNBK`; empty when unknown. */
  readonly colourCode: string;
  readonly number: string;
  /** Square millimetres; null when unknown. */
  readonly mm2: number | null;
  /** Whose colour and number these are. */
  readonly wireFrom: "machine" | "diagram" | null;
  /** The diagram's colour code where this machine's differs; else empty. */
  readonly diagramColourCode: string;
  /** What a meter should show on a healthy machine. */
  readonly expected: string;
  /** With which probes and in which conditions, a phrase each. */
  readonly expectedSetup: readonly string[];
  /** The reading that says most about the cavity: value, comparison and day. */
  readonly evidence: string;
  /** Between what and in which conditions it was taken, a phrase each. */
  readonly evidenceSetup: readonly string[];
  /** Other readings there, a line each: what speaks of a fault is named, the rest counted. */
  readonly evidenceBesides: readonly string[];
  /** A reading settled it. */
  readonly proved: boolean;
  /** That reading speaks against a healthy machine. */
  readonly faulty: boolean;
}
