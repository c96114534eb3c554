import { describe, expect, test } from "vitest";
import { satisfies } from "../../scripts/support/install.mjs";
import { allows } from "../../scripts/support/licences.mjs";

const lock = (packages: Record<string, { version?: string; optional?: boolean }>) => ({ packages });

describe("what is installed satisfies the lock file", () => {
  const wanted = lock({ "": {}, "node_modules/a": { version: "1.0.0" } });

  test("when every package is there in its version", () => {
    expect(satisfies(wanted, lock({ "node_modules/a": { version: "1.0.0" } }))).toBe(true);
  });

  test("but not when one is missing or another version", () => {
    expect(satisfies(wanted, lock({}))).toBe(false);
    expect(satisfies(wanted, lock({ "node_modules/a": { version: "1.0.1" } }))).toBe(false);
  });

  test("though a package for another system is missing", () => {
    const other = lock({ "node_modules/b": { version: "1.0.0", optional: true } });
    expect(satisfies(other, lock({}))).toBe(true);
  });
});

describe("a licence expression", () => {
  const good = (name: string) => name === "MIT" || name === "ISC";

  test.each([
    ["MIT", true],
    ["GPL-3.0", false],
    ["(GPL-3.0 OR MIT)", true],
    ["MIT AND ISC", true],
    ["MIT AND GPL-3.0", false],
    ["none stated", false],
  ])("%s: %s", (expression, suits) => {
    expect(allows(expression, good)).toBe(suits);
  });
});
