/** A note that a pin's role is open leads to the switch that would settle it. */
import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { type Job, readJobFile, writePintruth } from "../../src/job/index.ts";
import { withoutFilePickers } from "./support/diagram-desk.ts";

/** Opens the demo as it is while nobody has said that its key switch is one. */
async function openUnsaid(page: Page): Promise<void> {
  const read = readJobFile(readFileSync("sample-data/sweeper.pintruth"), "sweeper.pintruth");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { job, pictures } = read.value;
  const parts = job.diagram.parts.map((part) =>
    part.id === "S1" && part.kind === "switch" ? { ...part, control: "operator" as const } : part,
  );
  const unsaid: Job = { ...job, diagram: { ...job.diagram, parts } };
  const body = Buffer.from(writePintruth(unsaid, pictures));
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  await withoutFilePickers(page);
  await page.goto("./");
}

/** The note that more than one role fits pin 1. */
const open = (page: Page) =>
  page
    .getByRole("region", { name: "Findings" })
    .getByRole("listitem")
    .filter({ hasText: /A1:1\b/ })
    .filter({ has: page.getByRole("button", { name: "Say what works S1" }) });

test("what works a switch is said where the note leads to, and the note goes", async ({ page }) => {
  await openUnsaid(page);
  await open(page).getByRole("button", { name: "Say what works S1" }).click();
  const worked = page.getByRole("combobox", { name: "Worked by" });
  await expect(worked).toBeFocused();
  await expect(worked).toBeInViewport();
  await expect(worked).toHaveValue("operator");
  await expect(page.getByRole("heading", { name: /^S1 / })).toBeVisible();
  await worked.selectOption({ label: "key switch" });
  await expect(open(page)).toHaveCount(0);
  // The undo step is the one choice, and asks again.
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(open(page)).not.toHaveCount(0);
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("it leads from the findings to the diagram and the switch's details", async ({ page }) => {
    await openUnsaid(page);
    const screens = page.getByRole("navigation", { name: "Screens" });
    await screens.getByRole("button", { name: /Findings/ }).click();
    await open(page).getByRole("button", { name: "Say what works S1" }).tap();
    const worked = page.getByRole("combobox", { name: "Worked by" });
    await expect(worked).toBeFocused();
    await expect(worked).toBeInViewport();
    await worked.selectOption({ label: "key switch" });
    await screens.getByRole("button", { name: /Findings/ }).click();
    await expect(open(page)).toHaveCount(0);
  });
});
