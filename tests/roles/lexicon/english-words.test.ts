import fc from "fast-check";
import { expect, test } from "vitest";
import { DIN_72552_ROLES } from "../../../src/roles/lexicon/din-72552.ts";
import { ENGLISH } from "../../../src/roles/lexicon/english.ts";
import { INTERNATIONAL } from "../../../src/roles/lexicon/international.ts";
import type { Meaning } from "../../../src/roles/lexicon/meaning.ts";
import { narrow } from "../../../src/roles/lexicon/narrow.ts";
import { readWord } from "../../../src/roles/lexicon/read-word.ts";
import { tokensOf } from "../../../src/roles/lexicon/tokens.ts";
import "../../support/seed.ts";

const KNOWN: Readonly<Record<string, readonly Meaning[]>> = {
  ...DIN_72552_ROLES,
  ...INTERNATIONAL,
  ...ENGLISH,
};

/** What the words mean to somebody who has only the English table, longest phrase first. */
function inEnglishAlone(printed: string): readonly Meaning[] {
  const tokens = [...tokensOf(printed)];
  const groups: (readonly Meaning[])[] = [];
  const lookUp = (phrase: string): readonly Meaning[] | undefined =>
    KNOWN[phrase] ??
    (phrase.length > 3 && phrase.endsWith("S") ? KNOWN[phrase.slice(0, -1)] : undefined);
  while (tokens.length > 0) {
    const length = [3, 2, 1].find((count) => lookUp(tokens.slice(0, count).join(" "))) ?? 1;
    const found = lookUp(tokens.splice(0, length).join(" "));
    if (found && found.length > 0) groups.push(found);
  }
  return narrow(groups);
}

const covers = (found: readonly Meaning[], one: Meaning) =>
  found.some(({ role, side }) => role === one.role && (side === null || side === one.side));

const WORDS = Object.keys(KNOWN).map((word) => word.replace("<V>", "12V").replace("<REF>", "5V"));
/** Words of English diagrams that no table knows, or that other languages know. */
const BESIDES = ["", "", "", " BOOM", " PTO", " REAR", " OF", " ALARM", " CONTACT", " 2", " VAN"];

test("no English word loses a meaning to another language, alone or among others", () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 3 }),
      fc.constantFrom(" ", "/", "_", " - "),
      fc.constantFrom(...BESIDES),
      (words, between, beside) => {
        const printed = words.join(between) + beside;
        const found = readWord(printed);
        for (const one of inEnglishAlone(printed)) {
          const now = JSON.stringify(found);
          expect(covers(found, one), `${printed}: ${one.role}, now ${now}`).toBe(true);
        }
      },
    ),
    { numRuns: 4000 },
  );
});

test("alone, each says what it says in the English table and nothing else", () => {
  for (const [at, word] of Object.keys(KNOWN).entries()) {
    expect(readWord(WORDS[at] ?? ""), word).toEqual(KNOWN[word]);
  }
});
