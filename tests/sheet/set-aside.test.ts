import { expect, test } from "vitest";
import { type CheckResult, checkJob } from "../../src/check/index.ts";
import type { Job } from "../../src/job/index.ts";
import { renderSheetPdf, type SheetOptions, sheetCsv, sheetModel } from "../../src/sheet/index.ts";
import { lampModule, matched } from "../support/check-example.ts";
import { eightWayCheck, eightWayJob, installedFonts } from "./fixtures.ts";
import { readBack } from "./pdf-text.ts";

const options: SheetOptions = { side: "wire", size: "A4", date: "2025-11-14", revision: "B" };
const fonts = installedFonts();

const aside = (rules: Readonly<Record<string, string>>): CheckResult => {
  const check = eightWayCheck();
  const findings = check.findings.map((one) => {
    const reason = rules[one.rule];
    return reason === undefined ? one : { ...one, setAside: reason };
  });
  return { ...check, findings };
};
const model = (check: CheckResult) => sheetModel(eightWayJob(), "M1", { ...options, check });
const printed = async (check: CheckResult) => readBack(await renderSheetPdf(model(check), fonts));

test("what is set aside is printed among the notes with its reason, and counts for nothing", {
  timeout: 60_000,
}, async () => {
  const { pages, text } = await printed(aside({ "colour-differs": "Repaired with YERD in 2021" }));
  expect(pages).toBe(1);
  expect(text).toContain("Set aside by the user");
  expect(text).toMatch(
    /5 the wire is YERD on this machine .* Set aside: Repaired with YERD in 2021/,
  );
  expect(text).not.toContain("Also found");
  expect(text).toContain("2 contradictions");
  const all = await printed(
    aside({ "printed-role-contradicted": "Known", "no-supply": "Not here" }),
  );
  expect(all.text).toContain("No contradictions besides what is set aside");
  expect(all.text).toContain("Set aside besides: 1 elsewhere in the job.");
  expect(all.text).not.toContain("more not shown");
});

test.each([
  ["a page long", "It was so when it came to us. ".repeat(4000)],
  ["one endless word", "x".repeat(100_000)],
  ["of strange characters", "\u0000\u202eabc\ud800 ☃ 漢字 \u{1F600} <b>&amp;</b>\n\r\t{{x}}"],
])("a reason %s is printed without breaking the page", { timeout: 120_000 }, async (_, reason) => {
  const { pages, text } = await printed(aside({ "colour-differs": reason }));
  expect(pages).toBe(1);
  expect(text).toContain("Set aside: ");
  expect(text).toContain("qualified person come first");
});

test("more than the sheet has room for are counted", { timeout: 60_000 }, async () => {
  const check = aside({ "colour-differs": "known" });
  const one = check.findings.find(({ setAside }) => setAside !== undefined);
  if (!one) throw new Error("nothing is set aside");
  const { text } = await printed({
    ...check,
    findings: [...check.findings, ...Array(20).fill(one)],
  });
  expect(text).toContain("Set aside besides: 15 more on this plug.");
});

test("an adopted role is what the sheet says, the printed word struck through, with a note", {
  timeout: 60_000,
}, async () => {
  const plain: Job = matched(lampModule({ "1": "GND" })).job;
  const job: Job = { ...plain, adopted: [{ pin: "A1:1", role: "supply" }] };
  const sheet = sheetModel(job, "machine1", options);
  expect(sheet.contradictions).toEqual([]);
  expect(sheet.rows[0]).toMatchObject({ adopted: true, wrong: true, is: "permanent feed" });
  const { text } = await readBack(await renderSheetPdf(sheet, fonts));
  expect(text).toMatch(/A1:1 GND × \(wrong\) permanent feed †/);
  expect(text).toContain("† Adopted: the circuit’s role taken as what the cavity is.");
  expect(text).toContain("1 adopted from the circuit");
  expect(sheetCsv(sheet).split("\r\n")[0]).toMatch(/,adopted$/);
  expect(sheetCsv(sheet).split("\r\n")[1]).toMatch(/,yes$/);
});

test("an adopted role that no longer fits is not printed as what the cavity is", () => {
  const job: Job = {
    ...matched(lampModule()).job,
    adopted: [{ pin: "A1:1", role: "ground" }],
  };
  const sheet = sheetModel(job, "machine1", options);
  expect(sheet.rows[0]).toMatchObject({ adopted: false, is: "permanent feed" });
  expect(sheet.contradictions[0]?.message).toContain("was adopted as a ground");
  expect(checkJob(job, "machine1").summary.contradictions).toBe(1);
});
