import { existsSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { expect, test } from "vitest";
import { filesUnder, readText } from "../support/source-files.ts";

const PAGES = ["README.md", "DEVELOPERS.md", ...filesUnder("docs", /\.md$/)];

/** As a heading is addressed on the web: lower case, no marks, a hyphen for each space. */
const anchorsOf = (page: string): readonly string[] =>
  [...page.matchAll(/^#+ (.+)$/gm)].map(([, title = ""]) =>
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\- ]/gu, "")
      .replaceAll(" ", "-"),
  );

/** Paths that a page's links lead to, from the project's folder, each with the heading it names. */
function linksOf(page: string): readonly { readonly path: string; readonly heading: string }[] {
  const links = readText(page).matchAll(/\]\(([^)\s#]*)#?([^)\s]*)\)/g);
  return [...links].flatMap(([, path = "", heading = ""]) =>
    path.includes(":")
      ? []
      : [{ path: path === "" ? page : normalize(join(dirname(page), path)), heading }],
  );
}

test.each(PAGES)("every link of %s leads somewhere", (page) => {
  const broken = linksOf(page).filter(
    ({ path, heading }) =>
      !existsSync(path) || (heading !== "" && !anchorsOf(readText(path)).includes(heading)),
  );
  expect(broken).toEqual([]);
});

test("the guide leads to every page of it", () => {
  const pages = PAGES.filter((page) => /guide-[a-z-]+\.md$/.test(page));
  expect(pages.length).toBeGreaterThan(0);
  const led = linksOf("docs/guide.md").map(({ path }) => path);
  expect(pages.filter((page) => !led.includes(page))).toEqual([]);
});
