import type {
  CavityRef,
  Conductors,
  Id,
  Job,
  MachineWire,
  Part,
  PartOf,
  PinRef,
  Plug,
  Reading,
  Wire,
} from "../job/index.ts";
import type { Explanation, JudgedReading, ThingRead } from "../readings/index.ts";
import type { Role } from "../roles/index.ts";
import type { Finding, Severity } from "./finding.ts";
import type { MarksSay } from "./mislaid/by-marks.ts";
import type { Mislaid } from "./mislaid/mislaid.ts";

/** A part of the circuit beside how many wires come to each of its pins. */
export interface PartView {
  readonly part: Part;
  readonly wires: ReadonlyMap<PinRef, number>;
  /** Whether any wire of the circuit is drawn yet. */
  readonly isBegun: boolean;
  /** Nominal volts. */
  readonly systemVoltage: number;
}

/** The circuit as a whole for as long as no wire of it is drawn. */
export interface UntracedView {
  /** How many parts are placed; 0 as soon as any wire is drawn. */
  readonly placed: number;
  /** Ids of those that the tracing begins at: the modules, or else the first part. */
  readonly chief: readonly Id[];
}

/** Something that does work, and whether current can ever come to it and get away again. */
export interface LoadView {
  readonly part: Part;
  /** Some state feeds it, or what could is not known. */
  readonly canBeFed: boolean;
  /** Fed from one end, some state gives it a way back from the other. */
  readonly hasReturn: boolean;
}

/** A way from a battery's plus to ground that passes no load. */
export interface ShortView {
  readonly plus: PinRef;
  /** Id of the part at which it comes to ground. */
  readonly ground: Id;
  /** When it conducts, in words. */
  readonly condition: string;
  /** Parts on the way, ends left out. */
  readonly through: readonly Id[];
  /** Wires and parts from the battery to ground. */
  readonly path: readonly Id[];
}

/** A fuse or breaker of a known size, fed from one of its ends, and what it protects. */
export interface FuseView {
  readonly part: Part;
  readonly amps: number;
  /** Other fuses and breakers between what feeds it and itself. */
  readonly before: readonly Part[];
  /** Of the wires behind it that a short sends its current over: those whose size is known. */
  readonly wires: readonly Wire[];
  /** The loads on it alone that draw most and are on together whenever the first is. */
  readonly loads: readonly Part[];
  /** A that those draw at least while they are on, at nominal volts. */
  readonly drawn: number;
  /** Nominal volts. */
  readonly systemVoltage: number;
  readonly conductors: Conductors | undefined;
}

/** What a battery's plus comes to over no fuse or breaker: loads by id, modules by pin. */
export interface UnfusedView {
  readonly plus: PinRef;
  readonly fed: readonly string[];
}

/** Two page ends that are one line going on, with the one wire drawn to each; both have colours. */
export interface PageLineView {
  readonly ends: readonly [PinRef, PinRef];
  readonly wires: readonly [Wire, Wire];
}

/** A module with what is known of each of its pins, in its own order. */
export interface ModuleView {
  readonly module: PartOf<"module">;
  readonly roles: readonly Role[];
  /** Whether anything is drawn to the pin. */
  readonly wired: readonly boolean[];
  /** Whether the pin is tied to a cavity. */
  readonly tied: readonly boolean[];
  readonly words: Job["words"];
}

/** A module with a contradicted word that no adopted role stands in for. */
export interface MisprintedView {
  readonly module: ModuleView;
  /** All such modules, itself among them, in the order of the diagram; empty where they are many. */
  readonly all: readonly ModuleView[];
}

/** A plug with the pin that each of its cavities is tied to, in the plug's order; null: none. */
export interface PlugView {
  readonly plug: Plug;
  readonly pins: readonly (PinRef | null)[];
  /** Of the pins tied to a cavity that is empty or blocked, those that nothing is drawn to. */
  readonly bare: readonly PinRef[];
  /** Something is tied to it, if only to a cavity that it does not have. */
  readonly inUse: boolean;
}

export interface LinksView {
  readonly links: Job["links"];
}

/** A cavity's wire as found on the machine beside the wires drawn at the pin that it is tied to. */
export interface MachineWireView {
  readonly machineName: string;
  readonly cavity: CavityRef;
  readonly pin: PinRef;
  readonly here: MachineWire;
  readonly drawn: readonly Wire[];
}

/** A reading held against the prediction, and against the words printed where it was taken. */
export interface ReadingView {
  readonly reading: Reading;
  readonly judged: JudgedReading;
  /** What it is a reading of: the same for readings that should have come out alike. */
  readonly thing: ThingRead;
  /** What single fault gives it, where it is off its prediction; null where there is none to be off. */
  readonly explained: Explanation | null;
  /** Pins whose printed word, or the role adopted in its place, it forbids; why in one sentence. */
  readonly forbids: readonly { readonly role: Role; readonly why: string }[];
  /** Ids along the line from the module to where it was taken; empty where none is known. */
  readonly along: readonly Id[];
}

/** A plug at which something may have been mistaken for something else. */
export interface MislaidView {
  readonly plug: Plug;
  /** What readings and colours say; null where nothing. */
  readonly mislaid: Mislaid | null;
  /** What the marks say by themselves; null where nothing. */
  readonly marks: MarksSay | null;
  /** What settles what is not certain, in sentences; empty where all is. */
  readonly settles: string;
}

/** All readings of the machine, in their order. */
export interface ReadingsView {
  readonly readings: readonly ReadingView[];
}

/**
 * What a rule may be about, with all that it may look at. A view stays the same object while nothing
 * in it changes, and what a rule finds in it is kept: a rule must look at nothing else, least of all
 * at another rule.
 */
export interface Views {
  readonly short: ShortView;
  readonly load: LoadView;
  readonly part: PartView;
  readonly fuse: FuseView;
  readonly unfused: UnfusedView;
  readonly untraced: UntracedView;
  readonly "page-line": PageLineView;
  readonly module: ModuleView;
  readonly misprinted: MisprintedView;
  readonly plug: PlugView;
  readonly links: LinksView;
  readonly "machine-wire": MachineWireView;
  readonly mislaid: MislaidView;
  readonly reading: ReadingView;
  readonly readings: ReadingsView;
}

export type Found = Omit<Finding, "rule" | "severity" | "setAside" | "setAsideBefore">;

/** One rule, one id, one file. */
export interface RuleAbout<A extends keyof Views> {
  readonly id: string;
  readonly severity: Severity;
  /** It is asked about each view of this name, in the order of the job. */
  readonly about: A;
  readonly find: (view: Views[A]) => readonly Found[];
}

export type Rule = { readonly [A in keyof Views]: RuleAbout<A> }[keyof Views];

export const defineRule = <A extends keyof Views>(rule: RuleAbout<A>): RuleAbout<A> => rule;
