import { expect, test } from "vitest";
import { DIN_72552_ROLES } from "../../../src/roles/lexicon/din-72552.ts";
import { readWord } from "../../../src/roles/lexicon/read-word.ts";
import { referenceRows } from "../../reference/rows.ts";

const rolesIn = (printed: string) => readWord(printed).map(({ role }) => role);

/** What the published meaning of a terminal makes of it as a pin of a module, by its own words. */
const BY_MEANING: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^direct from battery|battery \+/, ["supply"]],
  [/^from second battery/, ["supply"]],
  [/switched \+/, ["switched-supply"]],
  [/^ground|generator -|battery -|^return to/, ["ground"]],
  [/^switched ground/, ["switched-ground"]],
  [/lamp|beam|headlamp|wiper motor|output/, ["output"]],
];

/** Not read as words: high voltage, the inside of an alternator, and letters that say too little. */
const NOT_READ = ["1", "4", "51", "59", "L", "R", "C", "C2", "C3"];

test("terminal numbers mean what DIN 72552 says of them", (context) => {
  const rows = referenceRows("codes.csv");
  if (!rows) return context.skip();
  const codes = rows.filter(({ standard }) => standard === "DIN 72552");
  expect(codes.length).toBeGreaterThan(40);
  for (const { code = "", meaning = "" } of codes) {
    const found = rolesIn(code);
    if (NOT_READ.includes(code)) {
      expect(found, code).toEqual([]);
      continue;
    }
    expect(found.length, code).toBeGreaterThan(0);
    const wanted = BY_MEANING.find(([text]) => text.test(meaning))?.[1] ?? [];
    expect(found, `${code}: ${meaning}`).toEqual(expect.arrayContaining([...wanted]));
  }
});

test("no other number is a terminal", () => {
  for (let number = 0; number < 100; number++) {
    const isTerminal = Object.hasOwn(DIN_72552_ROLES, String(number));
    expect(rolesIn(String(number)).length > 0, String(number)).toBe(isTerminal);
  }
});

test.each(["Kl. 30", "KLEMME 30", "Kl30", "borne 30", "端子 30"])(
  "%s is terminal 30",
  (printed) => {
    expect(rolesIn(printed)).toEqual(["supply"]);
  },
);

test("a number among letters is no terminal", () => {
  expect(rolesIn("A30X")).toEqual([]);
  expect(rolesIn("310")).toEqual([]);
  expect(rolesIn("OUT 3")).toEqual(["output"]);
});
