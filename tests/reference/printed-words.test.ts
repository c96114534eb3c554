import { describe, expect, test } from "vitest";
import type { RoleName } from "../../src/job/index.ts";
import { readWord } from "../../src/roles/index.ts";
import { LANGUAGES } from "../../src/roles/lexicon/languages.ts";
import { LINES } from "./printed-words/lines.ts";
import { LOADS } from "./printed-words/loads.ts";
import { RAILS } from "./printed-words/rails.ts";
import { type Published, SOURCES } from "./printed-words/sources.ts";

const ALL = { ...RAILS, ...LOADS, ...LINES };
type Concept = keyof typeof ALL;
const PUBLISHED: Published = ALL;

/** What a thing's name must be read as, and what it may be besides, as a pin that is called by it. */
const ROLES: Readonly<Record<Concept, readonly [must: RoleName, ...may: RoleName[]]>> = {
  ground: ["ground"],
  battery: ["supply"],
  plus: ["supply"],
  ignition: ["switched-supply", "input", "output"],
  start: ["switched-supply", "input", "output"],
  lamp: ["output", "input"],
  "left and right": ["output", "input"],
  brake: ["input", "output", "signal"],
  horn: ["output"],
  valve: ["output"],
  pump: ["output"],
  fan: ["output"],
  motor: ["output", "input"],
  relay: ["output"],
  switch: ["input", "switched-supply", "switched-ground"],
  sensor: ["input"],
  "sensor supply": ["sensor-supply"],
  "sensor ground": ["sensor-ground"],
  signal: ["input", "output", "signal"],
  input: ["input"],
  output: ["output"],
  "not connected": ["unused"],
};

const concepts = Object.keys(ALL) as Concept[];

describe.each(concepts)("%s", (concept) => {
  const [must, ...may] = ROLES[concept];
  const words = Object.entries(PUBLISHED[concept] ?? {}).flatMap(([language, some]) =>
    some.map(([word, source]) => ({
      language,
      word,
      from: source ? SOURCES[source] : "no source",
    })),
  );
  test.each(words)("is “$word” in $language ($from)", ({ word }) => {
    const roles = readWord(word).map(({ role }) => role);
    expect(roles).toContain(must);
    expect(roles.filter((role) => role !== must && !may.includes(role))).toEqual([]);
  });
});

test("every language with a table has a word for each of them", () => {
  for (const concept of concepts) {
    const languages = Object.entries(PUBLISHED[concept] ?? {});
    expect(languages.map(([name]) => name)).toEqual(LANGUAGES.map(({ name }) => name));
    for (const [, words] of languages) expect(words.length).toBeGreaterThan(0);
  }
});
