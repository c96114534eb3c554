import { expect, test } from "@playwright/test";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

const SCAN = "sample-data/sweeper/images/sweeper-sheet-7.jpg";

test("from an empty program to a printed sheet, with mouse and keyboard", async ({ page }) => {
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
  await page.waitForTimeout(1500);
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
  await page.screenshot({ path: "/tmp/lead/e2.png" });
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
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByRole("button", { name: "Enter a reading" }).click();
  console.log(await page.getByRole("region", { name: "Reading pad" }).ariaSnapshot());
  await page.screenshot({ path: "/tmp/lead/e5.png" });
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^6 Sheet/ }).click();
  await page.waitForTimeout(6000);
  console.log(await page.getByRole("dialog").ariaSnapshot());
  await page.screenshot({ path: "/tmp/lead/e6.png" });
});
