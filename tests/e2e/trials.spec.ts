/** Something is tried: read what will move, do it, enter what was seen. */
import { expect, type Locator, type Page, test } from "@playwright/test";
import { writePintruth } from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

const formOf = (page: Page) => page.getByRole("form", { name: "Trial" });
const aheadOf = (page: Page) => formOf(page).getByRole("status");
const choice = (page: Page, group: RegExp, name: string) =>
  formOf(page).getByRole("group", { name: group }).getByText(name, { exact: true });
const keptOf = (page: Page) => page.getByRole("list", { name: "Trials kept" });

async function openTrials(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByText("Trials", { exact: true }).click();
}

test("by mouse: what will move is read first, what was seen is kept in the file, one undo takes it back", async ({
  page,
}) => {
  await withoutFilePickers(page);
  await page.goto("./");
  await openTrials(page);
  const desk = new DiagramDesk(page);
  await expect(keptOf(page)).toContainText("The circuit as drawn has M1 running; it was still.");
  await page.getByRole("button", { name: /^Try something/ }).click();
  const form = formOf(page);
  await expect(form.getByRole("region", { name: "Cautions" })).toContainText("stand clear");
  await expect(aheadOf(page)).toContainText("As drawn, nothing moves or comes on.");
  const keep = form.getByRole("button", { name: /^Enter what was seen/ });
  await expect(keep).toBeDisabled();

  // the order counts: before the key is on the button does nothing
  await choice(page, /^S2 /, "pressed").click();
  await choice(page, /^S1 /, "run").click();
  await expect(aheadOf(page)).toContainText(/come on: lamp E1 control panel light\./);
  await choice(page, /^S2 /, "released").click();
  await choice(page, /^S2 /, "pressed").click();
  const steps = form.getByRole("region", { name: "What is done" }).getByRole("listitem");
  await expect(steps).toHaveText(["S1 to run", "S2 to pressed"]);
  await expect(aheadOf(page)).toContainText(/come on: .*relay K2.*motor M1/);
  await expect(aheadOf(page)).toContainText("nobody within reach");

  // those that should come on are asked for first
  const seen = form.getByRole("region", { name: "What was seen" });
  await expect(seen.locator("fieldset")).toHaveCount(4);
  await choice(page, /^lamp P1/, "lit").click();
  await choice(page, /^motor M1/, "still").click();
  await choice(page, /^relay K2/, "pulled in").click();
  await choice(page, /^relay K2/, "not looked at").click();
  await form.getByRole("textbox", { name: "Note" }).fill("hums");
  await form.getByRole("button", { name: "Keep this trial" }).click();

  const row = keptOf(page).getByRole("listitem").filter({ hasText: "T2" }).first();
  await expect(row).toContainText("S1 to run, S2 to pressed");
  await expect(row).toContainText("P1 was lit, as drawn.");
  await expect(row).toContainText("The circuit as drawn has M1 running; it was still.");
  const trials = async () => (await desk.savedJob()).machines[0]?.trials ?? [];
  const made = (await trials())[1];
  expect(made).toEqual({
    id: "T2",
    when: { switches: { S1: "run", S2: "pressed" } },
    saw: [
      { part: "P1", state: "on" },
      { part: "M1", state: "off" },
    ],
    note: "hums",
  });
  expect(Object.keys(made?.when.switches ?? {})).toEqual(["S1", "S2"]);

  await row.getByRole("button", { name: "Mend trial T2" }).click();
  await choice(page, /^motor M1/, "running").click();
  await form.getByRole("button", { name: "Keep the change" }).click();
  await expect(row).toContainText("M1 was running, as drawn.");
  await row.getByRole("button", { name: "Delete trial T2" }).click();
  await expect(keptOf(page)).not.toContainText("T2");
  for (const states of [["on", "on"], ["on", "off"], null]) {
    await page.keyboard.press("Control+z");
    expect((await trials())[1]?.saw.map(({ state }) => state) ?? null).toEqual(states);
  }
});

test("by keyboard alone, and nothing begun is lost with the tab", async ({ page }) => {
  await withoutFilePickers(page);
  await page.goto("./");
  await expect(page.getByText(/^[1-9]\d* contradictions?/).first()).toBeVisible();
  await page.keyboard.press("y");
  const form = formOf(page);
  await expect(form.getByRole("heading", { name: "A trial" })).toBeFocused();
  const radio = (group: RegExp, name: string) =>
    form.getByRole("group", { name: group }).getByRole("radio", { name, exact: true });
  await tabTo(page, radio(/^S4 /, "full"));
  await page.keyboard.press("ArrowRight");
  await expect(radio(/^S4 /, "low")).toBeChecked();
  await tabTo(page, form.getByRole("button", { name: "A1 pump hold module" }));
  await page.keyboard.press("Space");
  await expect(form.getByRole("region", { name: "Cautions" })).toContainText("wait for the module");
  await tabTo(page, form.getByRole("textbox", { name: "Note" }));
  await page.keyboard.type("tell-tale stays dark");

  await page.reload();
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await expect(form.getByRole("textbox", { name: "Note" })).toHaveValue("tell-tale stays dark");
  await tabTo(page, form.getByRole("button", { name: "Keep this trial" }));
  await page.keyboard.press("Enter");
  await expect(keptOf(page)).toContainText("“tell-tale stays dark”");
  const job = await new DiagramDesk(page).savedJob();
  expect(job.machines[0]?.trials[1]).toEqual({
    id: "T2",
    when: { switches: { S4: "low" }, unplugged: ["A1"] },
    saw: [],
    note: "tell-tale stays dark",
  });
});

/** Presses Tab until the thing has the focus. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let count = 0; count < 60; count++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("no Tab leads there");
}

test.describe("by touch, on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("a trial is set up and seen through with the thumb", async ({ page }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "More" }).tap();
    await page.getByRole("menuitem", { name: "Try something" }).tap();
    await choice(page, /^S1 /, "run").tap();
    await expect(aheadOf(page)).toContainText("control panel light");
    await choice(page, /^lamp E1/, "lit").tap();
    await formOf(page).getByRole("button", { name: "Keep this trial" }).tap();
    await expect(keptOf(page)).toContainText("E1 was lit, as drawn.");
  });
});

test("on a large job a thread beside the screen works out what will move", async ({ page }) => {
  const body = Buffer.from(writePintruth(bigJob(3000), new Map()));
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  await page.goto("./");
  await expect(page.getByRole("textbox", { name: "Title of the job" })).toHaveValue("3000 wires");
  await openTrials(page);
  await page.getByRole("button", { name: /^Try something/ }).click();
  await choice(page, /^S1/, "on").click();
  await expect(aheadOf(page)).toContainText("Working out what will move");
  await expect(aheadOf(page)).toContainText(/ove or come on/);
  await formOf(page)
    .getByText(/other loads and relays/)
    .click();
  await formOf(page).getByRole("searchbox", { name: "Find one by its name" }).fill("K118");
  await expect(
    formOf(page)
      .getByRole("group", { name: /^relay K118/ })
      .first(),
  ).toBeVisible();
});
