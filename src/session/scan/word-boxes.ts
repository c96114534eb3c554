import type { Box } from "../../base/index.ts";
import type { Session } from "../session.ts";
import type { Store } from "../store.ts";
import { pictureFileOf } from "./picture-file.ts";
import type { ReadWord } from "./words/read-word.ts";
import type { WordDesk } from "./words/word-desk.ts";

const NONE: readonly Box[] = [];

/** Boxes of what is surely print on the picture of the sheet at hand; none before it was read. */
export function wordBoxesOf(
  session: Session,
  desk: WordDesk,
): Pick<Store<readonly Box[]>, "get" | "subscribe"> {
  let known: { readonly words: readonly ReadWord[]; readonly boxes: readonly Box[] } | null = null;
  return {
    subscribe: desk.subscribe,
    get: () => {
      const { file, words } = desk.get();
      if (words.length === 0 || file === null || file !== pictureFileOf(session.get())) return NONE;
      if (known?.words !== words) {
        known = { words, boxes: words.filter(({ isPrint }) => isPrint).map(({ box }) => box) };
      }
      return known.boxes;
    },
  };
}
