import { expect, test } from "@playwright/test";

test("a first check is kept with the machine over a reload, and one undo takes it away", async ({
  page,
}) => {
  await page.goto("./");
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByText("First checks").click();
  await page.getByRole("button", { name: "Enter: Battery at rest" }).click();
  await page.getByRole("textbox", { name: "Volts", exact: true }).fill("24,9");
  await page.keyboard.press("Enter");
  await expect(page.getByText("About 75 % charged.")).toBeVisible();
  await expect(page.getByText("1 of 5 good")).toBeVisible();
  await expect(page.getByText(/^Saved/)).toBeVisible();
  await page.reload();
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await expect(page.getByText("1 of 5 good")).toBeVisible();
  await page.getByText("First checks").click();
  await page.getByRole("button", { name: "Enter: Leads together" }).click();
  await page.getByRole("textbox", { name: "Ohms" }).fill("0.2");
  await page.getByRole("button", { name: "Keep it" }).click();
  await expect(page.getByText("2 of 5 good")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByText("1 of 5 good")).toBeVisible();
});

test("what a test lamp would move is named before anything is typed", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByRole("button", { name: "Enter a reading" }).click();
  const pad = page.getByRole("region", { name: "Reading pad" });
  await page.getByRole("button", { name: /^Cavity 3(,|$)/ }).click();
  await pad.getByRole("button", { name: "Pick the black lead’s place from a list" }).click();
  await page.getByRole("option", { name: "battery +", exact: true }).click();
  await pad.getByRole("button", { name: /^A1 / }).click();
  await expect(pad).toContainText("As drawn, nothing moves or comes on.");
  await pad.getByText("test lamp as load").last().click();
  await expect(pad).toContainText(/The test lamp will move or bring on: .*relay K2/);
  await expect(pad).toContainText("nobody within reach");
});
