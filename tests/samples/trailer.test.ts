import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ISO_12098 } from "../../scripts/samples/trailer/iso-12098.ts";
import { checkJob } from "../../src/check/index.ts";
import { readSample } from "./sample-files.ts";

const TABLE = "../shared/reference/connectors.csv";

const check = () => checkJob(readSample("trailer-iso-12098/job.json"), "trailer3");

test("the published words of ISO 12098 are not contradicted, and nothing is warned of", () => {
  const loud = check().findings.filter(({ severity }) => severity !== "note");
  expect(loud).toEqual([]);
});

test("what the circuit says of the fifteen contacts", () => {
  const roles = check().roles.filter(({ pin }) => pin.startsWith("A1:"));
  expect(roles.map((role) => [role.pin.slice(3), role.fits.join()])).toEqual([
    ["1", "output"],
    ["2", "output"],
    ["3", "output"],
    // two ways to ground: either may be a coding strap
    ["4", "ground,input"],
    ["5", "output"],
    ["6", "output"],
    ["7", "output"],
    ["8", "output"],
    ["9", "supply"],
    ["10", "input"],
    ["11", "input"],
    ["12", "output"],
    ["13", "ground,input"],
    ["14", "signal"],
    ["15", "signal"],
  ]);
});

test("every published word that means a role is understood", () => {
  for (const role of check().roles) {
    expect([role.pin, role.verdict]).toEqual([
      role.pin,
      role.fits.length > 1 ? "undecided" : "agrees",
    ]);
  }
});

// ISO 12098 as in the pin table that the reference folder quotes
test.skipIf(!existsSync(TABLE))("functions, colours and sizes are those of the table", () => {
  const published = readFileSync(TABLE, "utf8")
    .split("\n")
    .filter((line) => line.startsWith("ISO 12098 15-pin 24V,"))
    .map((line) => line.trim().split(",").slice(1, 5));
  expect(published).toHaveLength(15);
  const typed = ISO_12098.map((row) => [
    row.pin,
    row.function,
    row.colour.base + (row.colour.tracer ?? ""),
    String(row.mm2),
  ]);
  expect(typed).toEqual(published);
});
