import { listAnd } from "../../../../roles/index.ts";
import type { WordItem } from "../../../../session/index.ts";

/** How many words that were read fit what is drawn since, in a sentence. */
export function freshText(fresh: readonly WordItem[]): string {
  if (fresh.length === 1) return "A word that was read fits what is drawn now.";
  const names = fresh.filter(({ targets }) => targets[0]?.key.startsWith("name ")).length;
  const among =
    names === 0 ? "" : names === 1 ? ", one of them a name" : `, ${names} of them names`;
  return `${fresh.length} words that were read fit what is drawn now${among}.`;
}

/** So many names are said one by one. */
const FEW = 3;

/** What splices are called of which nobody has read a name, in a sentence. */
export function laidText(splices: readonly string[]): string {
  const [first, second] = splices;
  const names = splices.length <= FEW ? listAnd(splices) : `${first}, ${second} and so on`;
  const called = splices.length === 1 ? "new splice is" : `${splices.length} new splices are`;
  return `The ${called} called ${names} for now: the picture’s words have not been read.`;
}
