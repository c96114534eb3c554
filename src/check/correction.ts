import type { CavityRef, Colour, Id, PinId, PinRef, RoleName } from "../job/index.ts";

/**
 * A way to put right what a finding tells of, as plain data: each is one edit of the job. A rule
 * offers one only where what it says follows from what is drawn, matched and measured; which of
 * several is right, the user decides.
 */
export type Correction =
  /** The sheet takes the circuit's role in place of the printed word. */
  | {
      readonly does: "adopt-role";
      readonly pin: PinRef;
      readonly role: RoleName;
      /** It follows from readings of this machine, so that it holds for no other. */
      readonly onThisMachine?: boolean;
    }
  /** The sheet goes back to the circuit's own role. */
  | { readonly does: "drop-role"; readonly pin: PinRef }
  /** What is tied to the one cavity is tied to the other, and the other way round. */
  | {
      readonly does: "exchange-cavities";
      readonly plug: Id;
      readonly a: string;
      readonly b: string;
    }
  /**
   * The face was drawn from the other side than it says. What was noted on this machine at its
   * cavities was found by where they lie, and goes where it belongs.
   */
  | { readonly does: "flip-face"; readonly plug: Id; readonly moves: readonly NoteMove[] }
  /** What was noted on this machine at some cavities of the plug was found at others: readings, and wires looked at. */
  | { readonly does: "move-notes"; readonly plug: Id; readonly moves: readonly NoteMove[] }
  /** `place` counts the plug's cavities from 0: a mark given twice does not tell which. */
  | {
      readonly does: "correct-mark";
      readonly cavity: CavityRef;
      readonly place?: number;
      readonly mark: string;
    }
  | { readonly does: "mark-empty"; readonly cavity: CavityRef }
  /** Neither empty nor blocked. */
  | { readonly does: "mark-in-use"; readonly cavity: CavityRef }
  /** Writes what was seen on the machine to a wire of the diagram. */
  | { readonly does: "take-colour"; readonly wire: Id; readonly colour: Colour }
  | { readonly does: "take-number"; readonly wire: Id; readonly number: string }
  | { readonly does: "remove-link"; readonly pin: PinRef; readonly cavity: CavityRef }
  /** Undoes every other tie of the pin and of the cavity. */
  | { readonly does: "keep-link"; readonly pin: PinRef; readonly cavity: CavityRef }
  /** The line at each of these pins goes on and is not traced. */
  | { readonly does: "mark-as-going-on"; readonly pins: readonly PinRef[] }
  /** Each printed word goes to the pin where it fits. */
  | { readonly does: "move-words"; readonly module: Id; readonly moves: readonly WordMove[] }
  /** The same between the pins of two modules. */
  | { readonly does: "move-words-across"; readonly moves: readonly PinWordMove[] };

/** From the mark that something was noted at to the one where it was found; all of a list at once. */
export interface NoteMove {
  readonly from: string;
  readonly to: string;
}

export interface WordMove {
  readonly from: PinId;
  readonly to: PinId;
  readonly word: string;
}

export interface PinWordMove {
  readonly from: PinRef;
  readonly to: PinRef;
  readonly word: string;
}
