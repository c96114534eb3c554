import { expect, type Page, test } from "@playwright/test";

const titleOf = (page: Page) => page.getByRole("textbox", { name: "Title of the job" });
const jobTitles = async (page: Page) => {
  await page.getByRole("button", { name: "Jobs" }).click();
  const list = page.getByRole("dialog", { name: "Jobs" });
  await expect(list.getByText("Open now")).toBeVisible();
  const names = await list
    .getByRole("button", { name: /^Rename / })
    .evaluateAll((all) => all.map((one) => one.getAttribute("aria-label") ?? ""));
  await page.keyboard.press("Escape");
  return names.map((name) => name.replace(/^Rename /, ""));
};

test("two windows on one job: each shows what the other saves, and no change is lost", async ({
  context,
}) => {
  const one = await context.newPage();
  await one.goto("./");
  await expect(titleOf(one)).toHaveValue(/^Sweeper 14/);
  const other = await context.newPage();
  await other.goto("./");
  await expect(titleOf(other)).toHaveValue(/^Sweeper 14/);

  await titleOf(one).fill("Named in the first");
  await titleOf(one).press("Enter");
  await expect(titleOf(other)).toHaveValue("Named in the first");
  await expect(other.getByText(/Another window changed this job/)).toBeVisible();

  await titleOf(other).fill("Named in the second");
  await titleOf(other).press("Enter");
  await expect(titleOf(one)).toHaveValue("Named in the second");
  expect(await jobTitles(one)).toEqual(["Named in the second"]);
});

test("two windows that save in the same moment keep both versions, and say so", async ({
  context,
}) => {
  // As when the news from the other window comes too late.
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, "BroadcastChannel");
  });
  const one = await context.newPage();
  await one.goto("./");
  await expect(titleOf(one)).toHaveValue(/^Sweeper 14/);
  const other = await context.newPage();
  await other.goto("./");
  await expect(titleOf(other)).toHaveValue(/^Sweeper 14/);

  await titleOf(one).fill("First");
  await titleOf(one).press("Enter");
  await expect(one.getByText("Saved", { exact: true })).toBeVisible();
  await one.waitForTimeout(300);
  await titleOf(other).fill("Second");
  await titleOf(other).press("Enter");
  await expect(other.getByText(/Another window changed/)).toBeVisible();
  await expect(titleOf(other)).toHaveValue(/\(other window\)$/);

  const titles = await jobTitles(other);
  expect(titles).toHaveLength(2);
  expect(titles).toContain("First");
  await other.reload();
  await expect(titleOf(other)).toHaveValue(/\(other window\)$/);
  await one.reload();
  expect(await jobTitles(one)).toEqual(expect.arrayContaining(["First"]));
});

test("a word half typed in the table is there after a reload", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: /^Printed word of A1:1: / }).click();
  const field = page.getByRole("textbox", { name: "Printed word of A1:1" });
  await field.press("ControlOrMeta+A");
  await field.pressSequentially("IGNITIO");
  await page.reload();
  await expect(page.getByRole("button", { name: /^Printed word of A1:1: IGNITIO/ })).toBeVisible();
});
