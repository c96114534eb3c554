import type { History, Id, Job, Probe, ReadingQuantity, When } from "../job/index.ts";
import type { Recording } from "./changes/recording.ts";
import type { OperateState } from "./play/operate-state.ts";
import type { TrialDraft } from "./trials/trial-draft.ts";

/** What the diagram board's pointer does. */
export type Tool =
  | { readonly name: "select" }
  | { readonly name: "pan" }
  /** The next click or drag places a part of this kind. */
  | { readonly name: "place"; readonly kind: string }
  /** Clicks lay a wire from pin to pin; `free` leaves out the right angles. */
  | { readonly name: "wire"; readonly free: boolean }
  /** Pointing at a line of the picture lights up its net. */
  | { readonly name: "follow" };

/** A reading being entered on the pad; tapping boards fills the probe that `asks` names. */
export interface ReadingDraft {
  readonly quantity: ReadingQuantity;
  readonly red: Probe | null;
  readonly black: Probe | null;
  readonly asks: "red" | "black" | null;
  readonly when: When;
  readonly with: "meter" | "test-lamp";
  /** As typed so far. */
  readonly value: string;
  readonly note: string;
  /** Id of the stored reading that this takes the place of; absent for a new one. */
  readonly mends?: string;
}

/** The stations of the job that the screens give a place of their own. */
export const STATION_IDS = ["diagram", "plug", "match", "check", "prove", "sheet"] as const;
export type StationId = (typeof STATION_IDS)[number];
/** Where the user is: at a station, or at home with the pin table. */
export type PlaceId = "pins" | StationId;

/** What lies over the boards, one at a time. */
export type DialogName =
  | "find"
  | "jobs"
  | "sheet"
  | "cautions"
  | "machines"
  | "compare"
  | "changes"
  | "keys";

/** Everything the screens show, saved part and unsaved part apart. */
export interface SessionState {
  /** Key of the job in the store of jobs. */
  readonly key: string;
  readonly job: Job;
  readonly history: History;
  /** The machine at hand: colours and readings are this one's. */
  readonly machine: Id;
  /** The sheet on the diagram board; null when there is none. */
  readonly sheet: Id | null;
  /** The plug on the plug board; null when there is none. */
  readonly plug: Id | null;
  /** The module chosen to be matched; null until one is, then see `moduleAtHand`. */
  readonly module: Id | null;
  /** Side the plug is looked at from; the stored points never move. */
  readonly side: "mating" | "wire";
  /** Chosen things, the chief one first: ids of parts, wires, readings; PinRefs; CavityRefs. */
  readonly selection: readonly string[];
  readonly tool: Tool;
  /** Decides what stands beside the boards, and what a phone shows. */
  readonly station: PlaceId;
  readonly dialog: DialogName | null;
  /** Whether the links are drawn across from board to board. */
  readonly showMatches: boolean;
  readonly draft: ReadingDraft | null;
  /** A trial being set up and seen through; it bears the machine that it is done on. */
  readonly trial: TrialDraft | null;
  /** Where what is drawn goes while a change of the machine at hand is recorded; null: the diagram. */
  readonly recording: Recording | null;
  /** Whether the bar of what can be done with the sheet's picture is shown. */
  readonly scanDesk: boolean;
  /** The machine operated on the drawing. */
  readonly operate: OperateState;
  /** Shown in the status line until the next one. */
  readonly notice: { readonly tone: "info" | "error"; readonly text: string } | null;
}
