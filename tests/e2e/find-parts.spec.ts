import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { distance } from "../../src/base/index.ts";
import { pinsOf, toSheet } from "../../src/circuit/index.ts";
import type { Job, Part } from "../../src/job/index.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

const found = (page: Page) => page.getByRole("region", { name: "Parts found" });

/** The demo with its picture, and nothing drawn over it. */
async function bareDemo(page: Page): Promise<DiagramDesk> {
  await withoutFilePickers(page);
  await page.goto("./");
  await expect(page.getByText(/^[1-9]\d* contradictions?/).first()).toBeVisible();
  const desk = new DiagramDesk(page);
  await desk.canvas.focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("Delete");
  return desk;
}

async function findParts(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Scan desk", exact: true }).click();
  await page.getByRole("button", { name: "Find parts" }).click();
  await expect(found(page).getByRole("status")).toContainText("places:", { timeout: 60_000 });
}

/** The demo as it was traced by hand, over the same picture. */
const traced = async (): Promise<Job> =>
  JSON.parse(
    await readFile(new URL("../../sample-data/sweeper/job.json", import.meta.url), "utf8"),
  );

const kinds = (parts: readonly Part[]) => {
  const counts: Record<string, number> = {};
  for (const { kind } of parts) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
};

test("parts are found on the picture, placed by consent, and taken back in one step", async ({
  page,
}) => {
  const desk = await bareDemo(page);
  expect((await desk.savedJob()).diagram.parts).toEqual([]);
  await findParts(page);
  expect((await desk.savedJob()).diagram.parts).toEqual([]);

  await found(page)
    .getByRole("button", { name: /^Place the \d+ sure ones$/ })
    .click();
  // The button that had the keys is gone: they are on the list of what is left.
  await expect(found(page).getByRole("list", { name: "Found" })).toBeFocused();
  const { parts } = (await desk.savedJob()).diagram;
  const byHand = (await traced()).diagram.parts.filter(({ kind }) => kind !== "splice");
  expect(kinds(parts)).toEqual(kinds(byHand));
  for (const part of parts) {
    const same = byHand.filter(({ kind }) => kind === part.kind);
    const nearest = Math.min(...same.map(({ at }) => distance(at, part.at)));
    expect(nearest, `${part.id} lies on the printed ${part.kind}`).toBeLessThan(20);
  }
  const module = parts.find(({ kind }) => kind === "module");
  const printed = byHand.find(({ kind }) => kind === "module");
  if (!module || !printed) throw new Error("no module");
  expect(pinsOf(module)).toHaveLength(6);
  pinsOf(module).forEach(({ at }, n) => {
    const there = pinsOf(printed)[n]?.at ?? [0, 0];
    expect(distance(toSheet(module, at), toSheet(printed, there))).toBeLessThan(12);
  });

  await page.keyboard.press("Control+z");
  expect((await desk.savedJob()).diagram.parts).toEqual([]);
});

test("by keyboard: Tab goes from one to the next, Enter places, Delete leaves", async ({
  page,
}) => {
  const desk = await bareDemo(page);
  await findParts(page);
  const buttons = found(page).getByRole("list", { name: "Found" }).getByRole("button");
  const count = await buttons.count();
  await buttons.first().focus();
  await page.keyboard.press("Tab");
  await expect(buttons.nth(1)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("Enter");
  await expect(buttons).toHaveCount(count - 1);
  await page.keyboard.press("Delete");
  await expect(buttons).toHaveCount(count - 2);
  expect((await desk.savedJob()).diagram.parts).toHaveLength(1);
});
