import { pinRef } from "../../job/index.ts";
import { draftPart } from "../diagram/draft.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

/** For words typed beside the wrong pins. A word that has changed since stays where it is. */
export const moveWords: CorrectionEdit<CorrectionOf<"move-words">> = {
  label: ({ module }) => `Move the words to the pins where they fit (${module})`,
  change: (draft, { module, moves }) => {
    const part = draftPart(draft, module);
    if (part?.kind !== "module") return;
    const printed = new Map(part.pins.map(({ id, printed: word }) => [id, word]));
    if (moves.some(({ from, word }) => printed.get(from)?.trim() !== word)) return;
    const left = new Set(moves.map(({ from }) => pinRef(module, from)));
    for (const { from, to } of moves) {
      const pin = part.pins.find(({ id }) => id === to);
      const word = printed.get(from);
      if (pin && word !== undefined) pin.printed = word;
      left.delete(pinRef(module, to));
    }
    for (const pin of part.pins) if (left.has(pinRef(module, pin.id))) delete pin.printed;
  },
};
