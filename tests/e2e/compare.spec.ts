/** Machines of one job beside the diagram and beside one another. */
import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { withoutFilePickers } from "./support/diagram-desk.ts";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Compare machines" });
const row = (page: Page, mark: string) =>
  dialog(page)
    .getByRole("row")
    .filter({ has: page.getByRole("rowheader", { name: new RegExp(`^${mark} `) }) });
const wire = (page: Page, mark: string, machine: string) =>
  dialog(page).getByRole("button", {
    name: new RegExp(`^Wire in cavity ${mark} of ${machine}:`),
  });

test("a second machine is compared from the keyboard, its colour set, undone, and the table saved", async ({
  page,
}) => {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: /^Machine:/ }).click();
  await page.getByRole("menuitem", { name: "Add a machine" }).click();
  await page.getByRole("button", { name: "Close" }).click();
  await page.keyboard.press("c");
  await expect(dialog(page)).toBeVisible();
  // The demo's own machine has another colour in cavity 6 than is drawn.
  await expect(row(page, "6")).toContainText("colour not as drawn");
  await expect(dialog(page).getByRole("status")).toHaveText("Differences in 1 of 8 cavities.");

  await wire(page, "2", "Machine 2").focus();
  await page.keyboard.press("Enter");
  const typed = page.getByRole("textbox", { name: "or type it" });
  await typed.fill("bl");
  await typed.press("Enter");
  await expect(page.getByRole("alert")).toContainText("black (BK) or blue (BU)");
  await typed.fill("WHT/RED");
  await typed.press("Enter");
  const noted = page.getByRole("dialog", { name: "Wire in cavity 2 of Machine 2" });
  await noted.getByLabel("Printed number").fill("77");
  await noted.getByLabel("Size").fill("2.5");
  await noted.getByLabel("Size").press("Enter");
  await page.keyboard.press("Escape");
  await expect(dialog(page)).toBeVisible();
  await expect(wire(page, "2", "Machine 2")).toContainText("WHRD 77 2.5 mm²");
  await expect(row(page, "2")).toContainText("machines differ: colours");

  await dialog(page).getByRole("checkbox", { name: "Differences only" }).check();
  await expect(dialog(page).getByRole("rowheader")).toHaveText([/^2/, /^6/]);
  const download = page.waitForEvent("download");
  await dialog(page).getByRole("link", { name: "Save table (CSV)" }).click();
  const csv = await readFile(await (await download).path(), "utf8");
  expect(csv.split("\r\n")).toHaveLength(4);
  expect(csv).toContain("Machine 2: colour");
  expect(csv).toContain("WHRD");

  await page.keyboard.press("Escape");
  await expect(dialog(page)).toBeHidden();
  for (let steps = 0; steps < 3; steps++) await page.keyboard.press("Control+z");
  await page.keyboard.press("c");
  await expect(wire(page, "2", "Machine 2")).toContainText("not noted");
});

test("a pop-up stays while an edit in it takes marks away from the table, and Escape shuts only it", async ({
  page,
}) => {
  await page.goto("./");
  await page.getByRole("button", { name: /^Machine:/ }).waitFor();
  await page.keyboard.press("c");
  await expect(row(page, "6")).toContainText("colour not as drawn");
  await wire(page, "6", "Sweeper 14").click();
  const noted = page.getByRole("dialog", { name: "Wire in cavity 6 of Sweeper 14" });
  const typed = noted.getByRole("textbox", { name: "or type it" });
  await typed.fill("");
  await typed.press("Enter");
  await expect(row(page, "6")).not.toContainText("colour not as drawn");
  await expect(noted).toBeVisible();
  // The keyboard goes on in the pop-up, not in the table under it.
  await page.keyboard.press("Tab");
  expect(await noted.evaluate((it) => it.contains(document.activeElement))).toBe(true);
  const number = noted.getByLabel("Printed number");
  const before = await number.inputValue();
  await number.fill("66");
  await number.press("Enter");
  await expect(row(page, "6")).toContainText("number");
  await number.fill(before);
  await number.press("Enter");
  await expect(row(page, "6")).not.toContainText("number");
  await expect(noted).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(noted).toBeHidden();
  await expect(dialog(page)).toBeVisible();
});

test("on a phone the table scrolls under its cavities, and a tap notes a wire", async ({
  browser,
}) => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  const page = await context.newPage();
  await page.goto("./");
  await page.getByRole("button", { name: "More" }).first().click();
  await page.getByRole("menuitem", { name: "Compare machines" }).click();
  const table = dialog(page).getByRole("region", { name: "Comparison" });
  const mark = row(page, "1").getByRole("rowheader");
  const before = await mark.boundingBox();
  await table.evaluate((element) => element.scrollTo({ left: 400 }));
  expect(await table.evaluate((element) => element.scrollLeft)).toBeGreaterThan(50);
  expect((await mark.boundingBox())?.x).toBeCloseTo(before?.x ?? 0, 0);
  const own = wire(page, "1", "Sweeper 14");
  expect((await own.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await own.tap();
  await page.getByRole("textbox", { name: "or type it" }).fill("sw/rt");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await expect(own).toContainText("BKRD");
  await expect(row(page, "1")).toContainText("colour not as drawn");
  await context.close();
});
