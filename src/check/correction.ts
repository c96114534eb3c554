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
  /** The face was drawn from the other side than it says. */
  | { readonly does: "flip-face"; readonly plug: Id }
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
  | { readonly does: "move-words"; readonly module: Id; readonly moves: readonly WordMove[] };

export interface WordMove {
  readonly from: PinId;
  readonly to: PinId;
  readonly word: string;
}
