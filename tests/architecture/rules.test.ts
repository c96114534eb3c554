import { describe, expect, test } from "vitest";
import { filesUnder, importsOf, readText } from "../support/source-files.ts";

const RULES = "src/check/rules";

const nameOf = (path: string) =>
  path.slice(path.lastIndexOf("/") + 1).replace(/(\.test)?\.\w+$/, "");
const names = (folder: string, ending: RegExp) =>
  filesUnder(folder, ending)
    .map(nameOf)
    .filter((name) => name !== "index");

/** Rule files, their pages and their tests: what lacks one of the three, one sentence each. */
function incomplete(
  rules: readonly string[],
  pages: readonly string[],
  tests: readonly string[],
): string[] {
  return [
    ...rules.filter((id) => !pages.includes(id)).map((id) => `${id} has no page`),
    ...rules.filter((id) => !tests.includes(id)).map((id) => `${id} has no test`),
    ...pages.filter((id) => !rules.includes(id)).map((id) => `the page ${id} has no rule`),
  ];
}

const rules = names(RULES, /\.ts$/);

describe("every rule", () => {
  test("is a rule file, a test and a page, all named by its id", () => {
    expect(rules.length).toBeGreaterThan(0);
    expect(
      incomplete(rules, names("docs/rules", /\.md$/), names("tests/check", /\.test\.ts$/)),
    ).toEqual([]);
  });

  test("is in the list, once, and the list is sorted", () => {
    const path = `${RULES}/index.ts`;
    const listed = importsOf({ path, text: readText(path) })
      .map(({ specifier }) => specifier ?? "")
      .filter((specifier) => specifier.startsWith("./"))
      .map(nameOf);
    expect(listed).toEqual([...rules].sort());
  });

  test("knows no other rule", () => {
    const known = rules.flatMap((id) => {
      const path = `${RULES}/${id}.ts`;
      return importsOf({ path, text: readText(path) })
        .filter(({ specifier }) => specifier?.startsWith("./"))
        .map(({ specifier }) => `${id} imports ${specifier}`);
    });
    expect(known).toEqual([]);
  });

  test("says its own id", () => {
    expect(rules.filter((id) => !readText(`${RULES}/${id}.ts`).includes(`"${id}"`))).toEqual([]);
  });
});

test("the guard sees a rule without a page, one without a test, and a page without a rule", () => {
  expect(incomplete(["a"], ["a"], ["a", "run"])).toEqual([]);
  expect(incomplete(["a"], [], ["a"])).toEqual(["a has no page"]);
  expect(incomplete(["a"], ["a"], [])).toEqual(["a has no test"]);
  expect(incomplete([], ["b"], [])).toEqual(["the page b has no rule"]);
});
