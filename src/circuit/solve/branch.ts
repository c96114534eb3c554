import type { Id, PinId, Position } from "../../job/index.ts";
import type { Element, ModuleDeed } from "../kinds/index.ts";

/** Between two nodes, or between two pins while nodes are not numbered yet. */
export interface Branch<Node = number> {
  readonly a: Node;
  readonly b: Node;
  /** The part, or the wire, that it belongs to; null for the meter. */
  readonly owner: Id | null;
  readonly element: Element | null;
  readonly acts: Acts;
  /** Conducts only while the decider of this id is in this state; always when null. */
  readonly gate: { readonly by: string; readonly on: boolean } | null;
  /** Of a switch's contact: the positions of its owner in which it conducts; null for all else. */
  readonly closedIn: readonly Position[] | null;
}

/** How a branch conducts. `low` and `high` are what a healthy one stays within. */
export type Acts =
  | { readonly is: "ohmic"; readonly ohms: number; readonly low: number; readonly high: number }
  /** A share `at` of a track; `at` moves freely from 0 to 1 on a healthy part. */
  | {
      readonly is: "slide";
      readonly track: number;
      readonly rising: boolean;
      /** Factors on `track`, where nobody has said it. */
      readonly spread?: readonly [number, number];
    }
  /** Ohms rise from `cold` to `hot`, which it has at `ratedVolts`. */
  | {
      readonly is: "filament";
      readonly hot: number;
      readonly cold: number;
      readonly ratedVolts: number;
      /** Factors on `hot`. */
      readonly spread: readonly [number, number];
    }
  | {
      readonly is: "source";
      readonly volts: number;
      readonly low: number;
      readonly high: number;
      readonly ohms: number;
    }
  /** Conducts from `a` to `b` once `volts` lie across it. */
  | {
      readonly is: "junction";
      readonly volts: number;
      readonly low: number;
      readonly high: number;
      readonly ohms: number;
      /** Factors on `ohms`, where nobody has said them. */
      readonly spread?: readonly [number, number];
    };

/** Something whose state follows from voltages: a coil, a fed module, a module's path. */
export type Decider<Node = number> =
  | {
      readonly id: string;
      readonly part: Id;
      readonly is: "coil";
      readonly a: Node;
      readonly b: Node;
      /** Volts. */
      readonly pullIn: number;
      readonly dropOut: number;
      /** Its contacts stay where the last pulse put them. */
      readonly latching: boolean;
    }
  | {
      readonly id: string;
      readonly part: Id;
      readonly is: "fed";
      readonly pairs: readonly (readonly [Node, Node])[];
      readonly minVolts: number;
    }
  | {
      readonly id: string;
      readonly part: Id;
      readonly is: "level";
      /** Null only where `does` needs no input to act: a flasher that runs while it is powered. */
      readonly input: Node | null;
      /** Against these the level counts; the first that the input hangs together with. */
      readonly grounds: readonly Node[];
      readonly active: "high" | "low";
      readonly does: Exclude<ModuleDeed, "always">;
      /** Of a delay; half a period of a flasher. Null when nobody has said. */
      readonly seconds: number | null;
      /** Id of the decider that feeds it; null when nobody has said. */
      readonly power: string | null;
    };

/** Pins between which nobody can say what the part does. */
export interface Unknown<Node = number> {
  readonly part: Id;
  readonly nodes: readonly Node[];
  /** A contact or fuse between two nodes that conducts or not, and can do nothing else. */
  readonly joint?: boolean;
  /** What is not known, as the end of "depends on ...". */
  readonly what: string;
}

/** Pins between which a part draws amps of which nobody has said how many. */
export interface Draw<Node = number> extends Unknown<Node> {
  /** A; more than such parts usually do. */
  readonly most: number;
}

/** What one element of a part becomes in the solver. */
export interface Lowered {
  readonly branches: readonly Branch<PinId>[];
  readonly deciders: readonly Decider<PinId>[];
  readonly unknowns: readonly Unknown<PinId>[];
  readonly draws?: readonly Draw<PinId>[];
}
