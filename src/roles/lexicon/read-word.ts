import type { Job } from "../../job/index.ts";
import { meaningsIn } from "./in-languages.ts";
import { type Meaning, means } from "./meaning.ts";
import { taughtRole } from "./taught-words.ts";
import { tokensOf } from "./tokens.ts";

/** What is longer is no word beside a pin, and nothing in it is read. */
const LONGEST_READ = 500;

/**
 * What a word printed beside a pin may mean, in any of the languages that have a table; empty where
 * nothing in it is known. What the job was taught for the whole word comes before everything else.
 */
export function readWord(printed: string, taught: Job["words"] = []): readonly Meaning[] {
  const lesson = taughtRole(printed, taught);
  if (lesson !== null) return means(lesson);
  if (printed.length > LONGEST_READ) return [];
  let found = known.get(printed);
  if (!found) {
    found = meaningsIn(tokensOf(printed));
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(printed, found);
  }
  return found;
}

/** The same few words stand beside most pins of a machine. */
const known = new Map<string, readonly Meaning[]>();
const MOST_KNOWN = 5000;
