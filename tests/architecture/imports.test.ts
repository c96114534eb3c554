import { describe, expect, test } from "vitest";
import { exists, filesUnder, readText, sourceFiles } from "../support/source-files.ts";
import {
  cycles,
  ENTRIES,
  KNOWS_DOM,
  KNOWS_NODE,
  MAY_IMPORT,
  PACKAGES,
  TO_COME,
  violations,
} from "./arrows.ts";

const files = sourceFiles("src");

/** Judges a file that does not exist. */
const judged = (path: string, text: string) => violations({ path, text });

describe("the sources", () => {
  test("import only along the arrows, through index.ts, and only packages they may know", () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.flatMap(violations)).toEqual([]);
  });

  test("hold no circle of files that need one another when loaded", () => {
    expect(cycles(files)).toEqual([]);
  });
});

describe("what the guards name exists:", () => {
  const named = [...KNOWS_NODE, ...KNOWS_DOM, ...ENTRIES];
  test.each(named)("%s", (path) => {
    expect(exists(path)).toBe(true);
  });

  test.each(Object.keys(PACKAGES))("the folder %s of the package list", (folder) => {
    expect(Object.keys(MAY_IMPORT)).toContain(folder);
  });

  test("every folder that the table lets anyone import is a row of it", () => {
    const targets = new Set(Object.values(MAY_IMPORT).flat());
    expect([...targets].filter((folder) => MAY_IMPORT[folder] === undefined)).toEqual([]);
  });

  test("every folder of the table, but for those still to come", () => {
    const empty = Object.keys(MAY_IMPORT).filter(
      (folder) => filesUnder(`src/${folder}`, /\.tsx?$/).length === 0,
    );
    expect(empty.sort()).toEqual([...TO_COME].sort());
  });

  test("every package listed for a folder is installed by the project", () => {
    const { dependencies } = JSON.parse(readText("package.json"));
    const listed = Object.values(PACKAGES).flat();
    expect(listed.filter((name) => !(name in dependencies))).toEqual([]);
  });
});

test("the core is compiled without a browser and without Node, but for the files that may know one", () => {
  const config = JSON.parse(readText("tsconfig.core.json").replace(/^\s*\/\/.*$/gm, ""));
  expect(config.compilerOptions.lib).toEqual(["ES2023"]);
  expect(config.compilerOptions.types).toEqual([]);
  expect(config.include).toEqual(["src"]);
  expect([...config.exclude].sort()).toEqual([...KNOWS_NODE, ...KNOWS_DOM].sort());
});

describe("the guard sees", () => {
  test.each([
    ["an arrow turned round", "src/job/x.ts", `import { check } from "../check/index.ts";`],
    [
      "a type imported against an arrow",
      "src/job/x.ts",
      `import type { F } from "../check/index.ts";`,
    ],
    ["an inline type import", "src/job/x.ts", `export type F = import("../check/index.ts").F;`],
    ["a re-export", "src/base/x.ts", `export * from "../job/index.ts";`],
    ["a lazy import", "src/base/x.ts", `export const load = () => import("../job/index.ts");`],
    ["a worker's file", "src/scan/x.ts", `new Worker(new URL("../job/x.ts", import.meta.url));`],
    [
      "a file behind another folder's index",
      "src/plug/x.ts",
      `import { a } from "../job/refs.ts";`,
    ],
    ["an import out of src", "src/plug/x.ts", `import { a } from "../../tests/a.ts";`],
    [
      "a name worked out at run time",
      "src/plug/x.ts",
      `export const f = (n: string) => import(n);`,
    ],
    ["isolate asking check", "src/isolate/x.ts", `import { f } from "../check/index.ts";`],
    [
      "the command line asking the session",
      "src/cli/x.ts",
      `import { s } from "../session/index.ts";`,
    ],
    ["the session making a store", "src/session/x.ts", `import { f } from "../store/index.ts";`],
    ["React outside the editor", "src/session/x.ts", `import { useState } from "react";`],
    ["Konva in the command line", "src/cli/x.ts", `import Konva from "konva/lib/Stage";`],
    ["Node in the core", "src/job/x.ts", `import { readFileSync } from "node:fs";`],
    ["Node without its prefix", "src/editor/x.ts", `import { join } from "path";`],
    ["an unlisted package", "src/circuit/x.ts", `import { z } from "zod";`],
    ["a folder nobody knows", "src/helpers/x.ts", "export const a = 1;"],
  ])("%s", (_what, path, text) => {
    expect(judged(path, text)).toHaveLength(1);
  });

  test("nothing wrong with what is allowed", () => {
    const text = `
      import { a } from "../base/index.ts";
      import type { Job } from "../job/index.ts";
      import { b } from "./b.ts";
      // import { c } from "../check/index.ts";
      const words = 'from "../check/index.ts"';
    `;
    expect(judged("src/circuit/x.ts", text)).toEqual([]);
  });

  test("a circle, and none where only types go round", () => {
    const a = { path: "src/job/a.ts", text: `import { b } from "./b.ts";` };
    const b = { path: "src/job/b.ts", text: `import { a } from "./a.ts";` };
    const typed = { path: "src/job/b.ts", text: `import type { a } from "./a.ts";` };
    expect(cycles([a, b])).toEqual(["src/job/a.ts -> src/job/b.ts -> src/job/a.ts"]);
    expect(cycles([a, typed])).toEqual([]);
  });
});
