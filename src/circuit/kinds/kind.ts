import type { Point } from "../../base/index.ts";
import type { Control, Id, PartKindName, PartOf, PinId, Position } from "../../job/index.ts";
import type { Failure } from "./failures.ts";

/** A pin and where it sits in the symbol, in symbol units before the part's turn. */
export interface PinPlace {
  readonly id: PinId;
  readonly at: Point;
}

/**
 * There only where nobody has said the part's value, so that `ohms` is no more than the usual size:
 * factors on it between which any part of the kind lies.
 */
export type Unsaid = readonly [low: number, high: number];

/**
 * How two pins of a part are joined inside it. The role inference reads only `is` and the
 * conditions (roles are decided by the kind of part on the path, never by an ohms threshold);
 * the solver reads the numbers of the same declaration.
 */
export type Law =
  /** A fuse or breaker: conducts while good. */
  | { readonly is: "protection"; readonly amps: number }
  /** A hand- or event-operated contact of a switch. */
  | {
      readonly is: "contact";
      readonly control: Control;
      readonly closedIn: readonly Position[];
      /** Positions that the switch does not stay in by itself. */
      readonly springPositions: readonly Position[];
    }
  /**
   * A relay's contact; `pulled`: closed while the coil of the same part is energised. `amps`: what
   * it may carry, where somebody has said.
   */
  | {
      readonly is: "relay-contact";
      readonly closedWhen: "pulled" | "rested";
      readonly amps?: number;
    }
  /**
   * A relay's coil. `ohms`: its winding alone; `parallelOhms`: a suppression resistor across it.
   * `cathode`: where a suppression diode's cathode sits. `latching`: its contacts stay where the
   * last pulse put them, so that its present state can't be told from what is on the coil now.
   */
  | {
      readonly is: "coil";
      readonly ohms: number;
      readonly unsaid?: Unsaid;
      readonly parallelOhms?: number;
      readonly latching?: boolean;
      readonly cathode: "a" | "b" | null;
      /** Shares of the system voltage. */
      readonly pullIn: number;
      readonly dropOut: number;
    }
  /**
   * Something that does work: lamp, solenoid, motor, heater, horn. `coldOhms` differs for a filament.
   * `spread`: factors on `ohms` that a good part stays within, cold morning to hot machine.
   * `brief`: made to be on for a moment only.
   */
  | {
      readonly is: "load";
      readonly ohms: number;
      readonly coldOhms: number;
      readonly spread: readonly [low: number, high: number];
      readonly unsaid?: Unsaid;
      readonly cathode: "a" | "b" | null;
      readonly brief?: true;
    }
  /** A light-emitting lamp: conducts from `a` (anode) to `b` only. */
  | {
      readonly is: "led";
      readonly ohms: number;
      readonly volts: number;
      readonly unsaid?: Unsaid;
    }
  /** A plain resistor: a load, a pull-up, a terminator or a coding part; the circuit can't tell. */
  | { readonly is: "resistor"; readonly ohms: number; readonly unsaid?: Unsaid }
  /** `unsaid`: Ω, not factors, that any sender lies between, where a limit of this one is not said. */
  | {
      readonly is: "sender";
      readonly ohmsMin: number;
      readonly ohmsMax: number;
      readonly unsaid?: Unsaid;
    }
  /** The whole track of a potentiometer, end to end. */
  | { readonly is: "track"; readonly ohms: number; readonly unsaid?: Unsaid }
  /** From an end of the track to the wiper. */
  | { readonly is: "wiper"; readonly ohms: number; readonly unsaid?: Unsaid }
  /** Conducts from `a` (anode) to `b` (cathode). */
  | { readonly is: "diode" }
  /**
   * `a` is the positive terminal. `live`: always, only with the engine running, while `fedBy` (or
   * one of the pairs in `orBy`) has `minVolts` across it, or nobody has said when.
   * `restOhms`: what it is while not live; open when absent.
   */
  | {
      readonly is: "source";
      readonly volts: number;
      readonly ohms: number;
      readonly restOhms?: number;
      readonly live: "always" | "engine-running" | "unknown" | Fed;
      /** What it gives it draws from where it is fed, and nobody has said how much that is. */
      readonly drawsUnsaid?: true;
    }
  /** What a module does between two of its pins, as far as somebody has said. */
  | {
      readonly is: "module-path";
      readonly does: ModuleDeed;
      /** The pin that decides; its level counts against the module's own ground. */
      readonly input: PinId | null;
      readonly active: "high" | "low";
      readonly seconds: number | null;
      /** Acts only while powered; null when nobody has said by what. */
      readonly power: Fed | null;
    };

export type ModuleDeed =
  | "follow"
  | "invert"
  | "toggle"
  | "delay-on"
  | "delay-off"
  | "flash"
  | "always";

/** Pairs of positive and negative pin of the same part, any one of which feeds it. */
export interface Fed {
  readonly fedBy: readonly [PinId, PinId];
  readonly orBy?: readonly (readonly [PinId, PinId])[];
  /** Volts below which it does nothing. */
  readonly minVolts: number;
}

/** One join between two pins of the same part. */
export interface Element {
  readonly part: Id;
  readonly a: PinId;
  readonly b: PinId;
  readonly law: Law;
}

/** What a single pin is to whoever meets it from outside, beside the elements that end there. */
export type Terminal =
  | "battery-plus"
  | "battery-minus"
  | "chassis"
  | "sensor-plus"
  | "sensor-minus"
  | "sensor-signal"
  | "charge-signal"
  | "module"
  | "page-end";

export type FaultMode =
  | "open"
  | "shorted"
  | "high-resistance"
  | "stuck-open"
  | "stuck-closed"
  | "grounded"
  | "shorted-to-supply"
  | "bridged"
  | "leaky"
  | "dead";

/** A stroke of a symbol in symbol units, before the part's turn; the board scales and turns it. */
export type Stroke =
  | {
      readonly draw: "line";
      readonly points: readonly Point[];
      readonly closed?: boolean;
      readonly filled?: boolean;
      readonly dashed?: boolean;
    }
  | {
      readonly draw: "circle";
      readonly at: Point;
      readonly radius: number;
      readonly filled?: boolean;
    }
  /** Angles in degrees, clockwise from the x axis. */
  | {
      readonly draw: "arc";
      readonly at: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
    }
  /** Text stays upright whatever the part's turn. `size` in symbol units. */
  | {
      readonly draw: "text";
      readonly at: Point;
      readonly text: string;
      readonly size: number;
      readonly align: "left" | "centre" | "right";
    };

/** Everything the program knows about one kind of part, declared once. */
export interface PartKind<K extends PartKindName> {
  readonly kind: K;
  /** What a mechanic calls it, lower case, e.g. "fuse". */
  readonly title: string;
  /** Letter of IEC 81346-2 that its ids start with. */
  readonly letter: string;
  /** The fields a newly placed part of this kind starts with, for a system voltage. */
  readonly defaults: (
    systemVoltage: number,
  ) => Omit<PartOf<K>, "id" | "kind" | "sheet" | "at" | "turn">;
  readonly pins: (part: PartOf<K>) => readonly PinPlace[];
  /** Values that the part leaves out come from the defaults for `systemVoltage`. */
  readonly elements: (part: PartOf<K>, systemVoltage: number) => readonly Element[];
  readonly terminal?: (part: PartOf<K>, pin: PinId) => Terminal | null;
  /** Fed without a fuse on many a machine: always, or where a relay's or solenoid's contact switches it. */
  readonly oftenUnfused?: "always" | "behind-relay";
  /** How it fails; a terminal on it and the wires to it have failures of their own. */
  readonly failures: readonly Failure[];
  readonly draw: (part: PartOf<K>) => readonly Stroke[];
}
