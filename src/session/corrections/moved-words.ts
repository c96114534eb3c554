import type { PinWordMove } from "../../check/index.ts";
import { type Id, type Job, type ModulePin, ownerOf, pinRef, splitRef } from "../../job/index.ts";
import { draftPart } from "../diagram/draft.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

/** For words typed beside the wrong pins. A word that has changed since stays where it is. */
export const moveWords: CorrectionEdit<CorrectionOf<"move-words">> = {
  label: ({ module }) => `Move the words to the pins where they fit (${module})`,
  change: (draft, { module, moves }) =>
    moveBetween(
      draft,
      moves.map(({ from, to, word }) => ({
        from: pinRef(module, from),
        to: pinRef(module, to),
        word,
      })),
    ),
};

export const moveWordsAcross: CorrectionEdit<CorrectionOf<"move-words-across">> = {
  label: ({ moves }) =>
    `Move the words to the pins where they fit (${modulesIn(moves).join(", ")})`,
  change: (draft, { moves }) => moveBetween(draft, moves),
};

const modulesIn = (moves: readonly PinWordMove[]): readonly Id[] =>
  [...new Set(moves.map(({ from }) => ownerOf(from)))].sort();

/** All words at once, or none where one of them is gone. */
function moveBetween(draft: Job, moves: readonly PinWordMove[]): void {
  const pins = new Map(
    moves.flatMap(({ from, to }) => [from, to]).map((ref) => [ref, pinIn(draft, ref)] as const),
  );
  const words = new Map([...pins].map(([ref, pin]) => [ref, pin?.printed]));
  if (moves.some(({ from, word }) => words.get(from)?.trim() !== word)) return;
  if (moves.some(({ to }) => !pins.get(to))) return;
  const filled = new Set(moves.map(({ to }) => to));
  for (const { from, to } of moves) {
    const [pin, word] = [pins.get(to), words.get(from)];
    if (pin && word !== undefined) pin.printed = word;
    if (!filled.has(from)) delete pins.get(from)?.printed;
  }
}

function pinIn(draft: Job, ref: string): ModulePin | null {
  const { owner, name } = splitRef(ref);
  const part = draftPart(draft, owner);
  return (part?.kind === "module" && part.pins.find(({ id }) => id === name)) || null;
}
