import { expect, test } from "@playwright/test";
import { withoutFilePickers } from "./support/diagram-desk.ts";

test("a word that nobody knows is asked about, taught by one choice, kept and forgotten", async ({
  page,
}) => {
  await withoutFilePickers(page);
  await page.goto("./");
  const row = page.getByRole("row", { name: "cavity 6", exact: true });
  await row.getByRole("button", { name: /^Printed word of A1:6/ }).click();
  await page.getByRole("textbox", { name: "Printed word of A1:6" }).fill("WSP2");
  await page.keyboard.press("Enter");
  await expect(row.getByText("unproven")).toBeVisible();

  const question = row.getByLabel("What does “WSP2” mean here?");
  await question.selectOption("output");
  await expect(row.getByText("agrees")).toBeVisible();
  await expect(question).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(question).toBeVisible();
  await page.getByRole("button", { name: "Redo" }).click();
  await expect(row.getByText("agrees")).toBeVisible();

  await page.getByRole("button", { name: "Open cavity 6" }).click();
  await expect(page.getByText("“WSP2” means an output in this job").first()).toBeVisible();
  await page.getByRole("button", { name: "Forget it" }).first().click();
  await expect(row.getByText("unproven")).toBeVisible();
});

test("a known word is taught another meaning, stands in the list of taught words, and undo takes it back", async ({
  page,
}) => {
  await withoutFilePickers(page);
  await page.goto("./");
  const row = page.getByRole("row", { name: "cavity 6", exact: true });
  await row.getByRole("button", { name: /^Printed word of A1:6/ }).click();
  await page.getByRole("textbox", { name: "Printed word of A1:6" }).fill("EARTH");
  await page.keyboard.press("Enter");
  await expect(row.getByText("contradicted")).toBeVisible();
  await expect(row.getByLabel("What does “EARTH” mean here?")).toHaveCount(0);

  await page.getByRole("button", { name: "Open cavity 6" }).click();
  const word = page.getByRole("region", { name: "The word “EARTH”" }).first();
  await expect(word.getByText("“EARTH” is read as a ground.")).toBeVisible();
  await word.getByRole("button", { name: "It means something else here" }).click();
  await word.getByLabel("What does “EARTH” mean here?").selectOption("output");
  await expect(word.getByText("“EARTH” means an output in this job")).toBeVisible();
  await expect(row.getByText("agrees")).toBeVisible();
  await page.getByText("Words taught in this job (1)").first().click();
  await expect(page.getByText("“EARTH”: output").first()).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row.getByText("contradicted")).toBeVisible();
});
