import { spawnSync } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { expect, test } from "@playwright/test";
import { checkJob, type Finding } from "../../src/check/index.ts";
import { type Job, writeJobText } from "../../src/job/index.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

const SCAN = "sample-data/sweeper/images/sweeper-sheet-7.jpg";

test("from an empty program to a printed sheet, with mouse and keyboard", async ({
  page,
}, testInfo) => {
  test.setTimeout(180_000);
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  await page.getByRole("button", { name: "New job" }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles(SCAN);
  const desk = new DiagramDesk(page);
  await expect(desk.canvas).toBeVisible();
  for (let i = 0; i < 4; i++) await page.getByRole("button", { name: /^Zoom in/ }).click();
  await desk.place("battery", "G1", [70, 300]);
  await desk.drawModule([220, 30], [500, 110]);
  for (const [x, word] of [
    [260, "OUT"],
    [330, "PWR"],
    [400, "GND"],
    [470, "IN"],
  ] as const) {
    await desk.addPin([x, 110], word);
  }
  await desk.place("fuse", "F1", [170, 220]);
  await desk.place("ground", "X1", [280, 330]);
  await desk.place("switch", "S1", [390, 220]);
  await desk.place("lamp", "P1", [520, 260]);
  const at = await desk.pins();
  await page.getByRole("button", { name: "Draw wires", exact: true }).click();
  for (const [from, to] of [
    ["G1:+", "F1:1"],
    ["F1:2", "A1:1"],
    ["A1:2", "X1:1"],
    ["F1:2", "S1:1"],
    ["S1:2", "A1:3"],
    ["A1:4", "P1:1"],
    ["P1:2", "X1:1"],
    ["G1:-", "X1:1"],
  ] as const) {
    await desk.wire(at(from), at(to));
  }
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Rows and columns" }).click();
  const plug = page.getByRole("dialog", { name: "Draw a plug" });
  await plug.getByRole("textbox", { name: "Columns" }).fill("2");
  await plug.getByRole("button", { name: "Draw it" }).click();
  await page.getByRole("button", { name: /^3 Match/ }).click();
  await page.getByRole("button", { name: /^Match by equal marks/ }).click();
  await expect(page.getByRole("button", { name: /^4 contradictions/ })).toBeVisible();
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  const pad = page.getByRole("region", { name: "Reading pad" });
  for (const [cavity, value] of [
    ["X2:1", "25,2v"],
    ["X2:3", "0"],
    ["X2:4", "0.0"],
  ] as const) {
    await page.getByRole("button", { name: "Enter a reading" }).click();
    await pad.getByRole("button", { name: "Pick the red lead’s place from a list" }).click();
    await page.getByRole("combobox", { name: "Search for a place" }).fill(cavity);
    await page.keyboard.press("Enter");
    const unplug = pad.getByRole("button", { name: "A1", exact: true });
    if ((await unplug.getAttribute("aria-pressed")) !== "true") await unplug.click();
    await pad.getByRole("textbox", { name: "Value in volts" }).fill(value);
    await pad.getByRole("button", { name: "Keep this reading" }).click();
  }
  await expect(page.getByRole("region", { name: "Readings" }).getByRole("listitem")).toHaveCount(3);

  await page.getByRole("button", { name: /^6 Sheet/ }).click();
  const sheet = page.getByRole("dialog", { name: "Corrected pinout sheet" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    sheet.getByRole("link", { name: "Save PDF" }).click(),
  ]);
  const text = await textOfPdf(await readFile(await download.path()));
  for (const words of ["OUT", "PWR", "GND", "IN", "permanent feed", "ground", "input", "output"])
    expect(text).toContain(words);
  await page.keyboard.press("Escape");

  const before = await desk.savedJob();
  await page.reload();
  await expect(page.getByRole("button", { name: /4 contradictions/ }).first()).toBeVisible();
  const after = await desk.savedJob();
  expect(after).toEqual(before);
  expect(after.machines[0]?.readings.map((one) => [one.red, one.value])).toEqual([
    ["X2:1", 25.2],
    ["X2:3", 0],
    ["X2:4", 0],
  ]);

  // The file gives the same findings on the command line.
  const file = testInfo.outputPath("job.json");
  await writeFile(
    file,
    writeJobText({ ...after, diagram: { ...after.diagram, sheets: sheetsOnly(after) } }),
  );
  const answer = spawnSync(process.execPath, ["bin/pintruth.mjs", "check", "--json", file], {
    encoding: "utf8",
  });
  expect(answer.status, answer.stderr).toBe(1);
  const { findings } = JSON.parse(answer.stdout);
  const contradicted = findings.filter((one: Finding) => one.severity === "contradiction");
  expect(contradicted.map((one: Finding) => [one.rule, one.subjects[0]])).toEqual(
    ["A1:1", "A1:2", "A1:3", "A1:4"].map((pin) => ["printed-role-contradicted", pin]),
  );
  expect(findings).toEqual(
    JSON.parse(JSON.stringify(checkJob(after, after.machines[0]?.id ?? "").findings)),
  );
});

/** The sheets without their pictures, which a bare .json leaves behind. */
const sheetsOnly = (job: Job) => job.diagram.sheets.map(({ image: _, ...sheet }) => sheet);

async function textOfPdf(bytes: Uint8Array): Promise<string> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const file = await getDocument({ data: new Uint8Array(bytes) }).promise;
  const page = await file.getPage(1);
  const { items } = await page.getTextContent();
  return items.map((item) => ("str" in item ? item.str : "")).join(" ");
}
