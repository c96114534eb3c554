import { expect, test } from "vitest";
import { KINDS } from "../../src/circuit/index.ts";
import { PART_KINDS } from "../../src/job/index.ts";
import { exists } from "../support/source-files.ts";

test("every kind of part of the job format is declared once, under its own name", () => {
  expect(Object.keys(KINDS).sort()).toEqual([...PART_KINDS].sort());
  for (const [name, kind] of Object.entries(KINDS)) expect(kind?.kind).toBe(name);
});

test("the declarations lie where the architecture says", () => {
  expect(exists("src/circuit/kinds/index.ts")).toBe(true);
});

test("every kind says how it fails; a page end is only where the drawing stops", () => {
  const silent = Object.values(KINDS).filter(({ failures }) => failures.length === 0);
  expect(silent.map(({ kind }) => kind)).toEqual(["offpage"]);
});

test("a kind names each way of failing once", () => {
  for (const { kind, failures } of Object.values(KINDS)) {
    const modes = failures.map(({ mode }: { mode: string }) => mode);
    expect(new Set(modes).size, kind).toBe(modes.length);
  }
});
