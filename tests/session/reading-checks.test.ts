import { expect, test } from "vitest";
import { newJob } from "../../src/job/index.ts";
import { checkLacking, checkOf, keepCheck, newCheckDraft } from "../../src/session/index.ts";

const AT = "2025-09-16T08:12:00+02:00";
const job = newJob("Test", 12);

test("numbers are read as the pad reads them", () => {
  const rest = { ...newCheckDraft("battery-at-rest"), value: "12,6v", celsius: "-10" };
  expect(checkOf(rest, job, AT)).toEqual({
    id: "C1",
    check: "battery-at-rest",
    value: 12.6,
    celsius: -10,
    at: AT,
  });
  const leads = { ...newCheckDraft("leads-together"), value: "200 mΩ" };
  expect(checkOf(leads, job, AT)).toMatchObject({ value: 0.2 });
});

test("what is lacking is one sentence that says what to type", () => {
  expect(checkLacking(newCheckDraft("battery-at-rest"))).toBe("Type what the meter shows.");
  expect(checkLacking({ ...newCheckDraft("leads-together"), value: "OL" })).toContain(
    "a lead is broken",
  );
  const meter = { ...newCheckDraft("meter-before"), value: "12.6" };
  expect(checkLacking(meter)).toContain("known source");
  expect(checkLacking({ ...meter, known: "0" })).toContain("has volts");
  expect(checkLacking({ ...meter, known: "12.6" })).toBeNull();
  const warm = { ...newCheckDraft("battery-at-rest"), value: "12.6", celsius: "warm" };
  expect(checkLacking(warm)).toContain("“warm” is no temperature");
  expect(checkLacking({ ...warm, celsius: "400" })).toContain("no temperature");
});

test("a check made again is kept beside the earlier one, with an id of its own", () => {
  const draft = newJob("Test", 12);
  for (const value of ["12.1", "12.6"]) {
    const made = checkOf({ ...newCheckDraft("battery-at-rest"), value }, draft, AT);
    if (made) keepCheck(draft, "machine1", made);
  }
  expect(draft.machines[0]?.firstChecks?.map(({ id, value }) => [id, value])).toEqual([
    ["C1", 12.1],
    ["C2", 12.6],
  ]);
  expect(() => keepCheck(draft, "gone", { id: "C9", check: "leads-together", value: 0 })).toThrow(
    "gone",
  );
});
