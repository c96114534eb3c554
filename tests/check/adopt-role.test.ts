import { expect, test } from "vitest";
import { roleToAdopt } from "../../src/check/adopt-role.ts";
import { ROLE_NAMES, type RoleName } from "../../src/job/index.ts";
import type { Role } from "../../src/roles/index.ts";

const role = (fits: RoleName[], meterFits: readonly RoleName[] = ROLE_NAMES): Role => ({
  pin: "A1:1",
  cavity: "X1:1",
  printed: "OUT",
  printedRole: "output",
  fits,
  circuitRole: "undecided",
  circuitSide: null,
  meterRole: null,
  meterFits,
  verdict: "contradicted",
  meterVerdict: "unproven",
  because: [],
  sentence: "",
});

test("the only role that the circuit leaves is offered, for every machine", () => {
  expect(roleToAdopt(role(["ground"]))).toEqual([
    { does: "adopt-role", pin: "A1:1", role: "ground" },
  ]);
});

test("one that takes a reading to single out is offered for the machine it was taken on", () => {
  expect(roleToAdopt(role(["supply", "ground"], ["supply", "input"]))).toEqual([
    { does: "adopt-role", pin: "A1:1", role: "supply", onThisMachine: true },
  ]);
});

test("where several are left, or circuit and meter share none, nothing is offered", () => {
  expect(roleToAdopt(role(["ground", "input"]))).toEqual([]);
  expect(roleToAdopt(role(["ground"], ["supply", "output"]))).toEqual([]);
});
