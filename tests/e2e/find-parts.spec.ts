import { expect, test } from "@playwright/test";
import { distance } from "../../src/base/index.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

/** The demo with its picture, and nothing drawn over it. */
async function bareDemo(page: import("@playwright/test").Page): Promise<DiagramDesk> {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: /Open the demo/ }).first().click();
  const desk = new DiagramDesk(page);
  await desk.canvas.focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("Delete");
  return desk;
}

test("parts are found on the picture, placed by consent, and taken back in one step", async ({ page }) => {
  const drawn = await bareDemo(page);
  const before = await drawn.savedJob();
  await page.getByRole("button", { name: "Scan desk" }).click();
  await page.getByRole("button", { name: "Find parts" }).click();
  const found = page.getByRole("region", { name: "Parts found" });
  await expect(found.getByRole("status")).toContainText("places:", { timeout: 60_000 });
  expect((await drawn.savedJob()).diagram.parts).toEqual(before.diagram.parts);

  await found.getByRole("button", { name: /^Place the \d+ sure ones$/ }).click();
  const placed = await drawn.savedJob();
  console.log(placed.diagram.parts.length, distance([0, 0], [0, 0]));
});
