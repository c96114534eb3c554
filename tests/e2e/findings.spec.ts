import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { withoutFilePickers } from "./support/diagram-desk.ts";

const findings = (page: Page) => page.getByRole("region", { name: "Findings" });
/** The contradiction that the diagram calls this pin by the wrong word. */
const wrongWord = (page: Page, word: string) =>
  findings(page)
    .getByRole("listitem")
    .filter({ hasText: `and the diagram calls it ${word}.` })
    .filter({ has: page.getByRole("button", { name: "Set aside" }) });
const counted = async (page: Page) => {
  const button = findings(page).getByRole("button", { name: /^\d+ contradictions?$/ });
  return Number.parseInt((await button.getAttribute("aria-label")) ?? "", 10);
};

test.beforeEach(async ({ page }) => {
  await withoutFilePickers(page);
  await page.goto("./");
  await expect(wrongWord(page, "OUT")).toBeVisible();
});

test("the circuit's role is adopted by one tap, printed so, and taken back by one undo", async ({
  page,
}) => {
  const before = await counted(page);
  const adopt = findings(page).getByRole("button", { name: "Adopt ground on the sheet (A1:4)" });
  await adopt.click();
  await expect(adopt).toHaveCount(0);
  expect(await counted(page)).toBe(before - 1);
  await expect(page.getByText("adopted for the sheet")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(adopt).toHaveCount(1);
  await page.getByRole("button", { name: "Redo" }).click();
  await page.getByRole("button", { name: /^6 Sheet/ }).click();
  const sheet = page.getByRole("dialog", { name: "Corrected pinout sheet" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    sheet.getByRole("link", { name: "Save PDF" }).click(),
  ]);
  const text = await textOfPdf(await download.path());
  expect(text).toMatch(/OUT\s+(× )?\(wrong\)\s+ground †/);
  expect(text).toContain("† Adopted: the circuit’s role");
});

test("a finding is set aside in one's own words, kept over a reload, printed, and brought back", async ({
  page,
}) => {
  const before = await counted(page);
  const chief = wrongWord(page, "OUT");
  await chief.getByRole("button", { name: "Set aside" }).click();
  await chief.getByRole("button", { name: "Set it aside" }).click();
  await expect(chief.getByRole("alert")).toContainText("Write a reason first");
  await chief.getByRole("textbox").fill("Frame strap added by the owner");
  await chief.getByRole("button", { name: "Set it aside" }).click();
  await expect(chief).toHaveCount(0);
  expect(await counted(page)).toBe(before - 1);
  await expect(page.getByText(/^Saved/)).toBeVisible();
  await page.reload();
  await page.getByRole("button", { name: /^6 Sheet/ }).click();
  const sheet = page.getByRole("dialog", { name: "Corrected pinout sheet" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    sheet.getByRole("link", { name: "Save PDF" }).click(),
  ]);
  expect(await textOfPdf(await download.path())).toContain(
    "Set aside: Frame strap added by the owner",
  );
  await page.keyboard.press("Escape");
  await findings(page).getByText("Set aside (1)").click();
  await expect(findings(page)).toContainText("“Frame strap added by the owner”");
  await findings(page)
    .getByRole("button", { name: /^Bring back/ })
    .click();
  await expect(chief).toBeVisible();
  expect(await counted(page)).toBe(before);
});

test("by keyboard alone: set aside, and back with its reason once it says another thing", async ({
  page,
}) => {
  const chief = wrongWord(page, "OUT");
  await chief.getByRole("button", { name: "Set aside" }).focus();
  await page.keyboard.press("Enter");
  await expect(chief.getByRole("textbox")).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(chief.getByRole("textbox")).toHaveCount(0);
  await expect(chief.getByRole("button", { name: "Set aside" })).toBeFocused();
  await page.keyboard.press("Enter");
  await page.keyboard.type("Known");
  await page.keyboard.press("Enter");
  await expect(findings(page).getByText("Set aside (1)")).toBeVisible();
  await page.getByRole("button", { name: /^Printed word of A1:4/ }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.type("LAMP OUT");
  await page.keyboard.press("Enter");
  await expect(wrongWord(page, "LAMP OUT")).toContainText("Set aside before: “Known”.");
  await expect(findings(page).getByText("Set aside (1)")).toHaveCount(0);
  await page.getByRole("button", { name: "Adopt ground on the sheet (A1:4)" }).focus();
  await page.keyboard.press("Enter");
  await expect(wrongWord(page, "LAMP OUT")).toHaveCount(0);
});

test("every finding with a path shows it over the picture when it is touched", async ({ page }) => {
  const ways = findings(page).getByRole("button", { name: /^(Show path|Path shown)$/ });
  const count = await ways.count();
  expect(count).toBeGreaterThan(4);
  expect(await pathPixels(page)).toBe(0);
  for (let n = 0; n < count; n++) {
    await ways.nth(n).click();
    await expect(ways.nth(n)).toHaveText("Path shown");
    await expect.poll(() => pathPixels(page)).toBeGreaterThan(200);
  }
});

/** Pixels of the path's own colour, #b8007a, on the canvases of the diagram board. */
const pathPixels = (page: Page) =>
  page.getByRole("application", { name: "Diagram board" }).evaluate((board) => {
    let found = 0;
    for (const canvas of board.querySelectorAll("canvas")) {
      const data = canvas.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height).data;
      for (let at = 0; data && at < data.length; at += 4) {
        const [red = 0, green = 0, blue = 0] = data.slice(at, at + 3);
        if (Math.abs(red - 0xb8) < 12 && green < 24 && Math.abs(blue - 0x7a) < 12) found++;
      }
    }
    return found;
  });

async function textOfPdf(path: string): Promise<string> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  const file = await getDocument({ data: new Uint8Array(await readFile(path)) }).promise;
  const page = await file.getPage(1);
  const { items } = await page.getTextContent();
  return items
    .map((one) => ("str" in one ? one.str : ""))
    .join(" ")
    .replace(/\s+/g, " ");
}
