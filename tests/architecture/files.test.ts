import { describe, expect, test } from "vitest";
import { exists, filesUnder, readText } from "../support/source-files.ts";

const FOLDERS = ["src", "tests", "scripts", "bin"];
const ASK_ABOVE = 400;
const NEVER_ABOVE = 700;

/** Files longer than 400 lines, each with the reason why it is better in one piece. */
const LONG: Readonly<Record<string, string>> = {
  "tests/support/role-oracle.ts":
    "an oracle is worth only what one can read in one go, top to bottom",
};

const code = FOLDERS.flatMap((folder) => filesUnder(folder, /\.(tsx?|mjs|css)$/));
const linesOf = (path: string) => readText(path).split("\n").length - 1;

/** What is wrong with a file's length; null when nothing is. Tables of standards may be any length. */
function tooLong(path: string, lines: number, reasons: Readonly<Record<string, string>>) {
  if (path.startsWith("src/standards/")) return null;
  if (lines > NEVER_ABOVE) return `${path} has ${lines} lines`;
  return lines > ASK_ABOVE && !reasons[path] ? `${path} has ${lines} lines and no reason` : null;
}

/** What is wrong with a file's name; null when nothing is. */
function badName(path: string): string | null {
  const name = path.slice(path.lastIndexOf("/") + 1);
  if (/^(utils?|helpers?|misc|common|stuff)\./.test(name)) return `${path} says nothing`;
  return /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z]+)*\.(tsx?|mjs|css)$/.test(name)
    ? null
    : `${path} is not in kebab-case`;
}

describe("files", () => {
  test("are short, or there is a reason", () => {
    expect(code.map((path) => tooLong(path, linesOf(path), LONG)).filter(Boolean)).toEqual([]);
  });

  test("are short as a rule: half of those in src/ have fewer than 150 lines", () => {
    const lengths = filesUnder("src", /\.tsx?$/)
      .map(linesOf)
      .sort((a, b) => a - b);
    expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThan(150);
  });

  test("are named in kebab-case for what is inside", () => {
    expect(code.map(badName).filter(Boolean)).toEqual([]);
  });

  test("that have a reason to be long exist and are long", () => {
    const stale = Object.keys(LONG).filter((path) => !exists(path) || linesOf(path) <= ASK_ABOVE);
    expect(stale).toEqual([]);
  });

  test("name no place of the machine they were written on", () => {
    const pages = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "package.json", ".ci/run"];
    const texts = [...code, ...filesUnder("docs", /\.(md|json)$/), ...pages.filter(exists)];
    const named = texts.filter((path) => namesMachine(readText(path)));
    expect(named).toEqual([]);
  });
});

/** A path that exists only on somebody's machine, or the host of a package registry. */
function namesMachine(text: string): boolean {
  const folders = ["work", "tmp", "home", "root", "usr", "Users"].join("|");
  return (
    new RegExp(`(^|[\\s"'\`(=:])/(${folders})/(?!bin/env\\b)`, "m").test(text) ||
    new RegExp(["registry", "npmjs"].join("\\.")).test(text)
  );
}

describe("the guard sees", () => {
  test("a file that is too long, with or without a reason", () => {
    expect(tooLong("src/job/x.ts", 401, {})).not.toBeNull();
    expect(tooLong("src/job/x.ts", 401, { "src/job/x.ts": "one table" })).toBeNull();
    expect(tooLong("src/job/x.ts", 701, { "src/job/x.ts": "one table" })).not.toBeNull();
    expect(tooLong("src/job/x.ts", 400, {})).toBeNull();
    expect(tooLong("src/standards/x.ts", 5000, {})).toBeNull();
  });

  test.each(["src/job/utils.ts", "src/job/Job.ts", "src/editor/partCard.tsx", "src/a/a_b.ts"])(
    "the name %s",
    (path) => {
      expect(badName(path)).not.toBeNull();
    },
  );

  test("nothing wrong with the usual names", () => {
    const good = ["src/job/index.ts", "src/editor/a-b.module.css", "tests/x/iec-60757.test.ts"];
    expect(good.map(badName).filter(Boolean)).toEqual([]);
  });

  test("a place of this machine", () => {
    expect(namesMachine(`read("/${"tmp"}/x.json")`)).toBe(true);
    expect(namesMachine("#!/usr/bin/env node")).toBe(false);
    expect(namesMachine("the job's work/tmp folder")).toBe(false);
  });
});
