/** A machine too large to be checked between two keystrokes: its check runs beside the screen. */
import { expect, type Page, test } from "@playwright/test";
import { writePintruth } from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";

const WORKER = /analysis-worker/;

/** Opens the app on a first visit, with a large job where its demo would be. */
async function openLarge(page: Page): Promise<void> {
  const body = Buffer.from(writePintruth(bigJob(3000), new Map()));
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  await page.goto("./");
  await expect(page.getByRole("textbox", { name: "Title of the job" })).toHaveValue("3000 wires");
}

/** Prints GND at the pin that its module is fed through, which is wrong. */
async function printWrongly(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Printed word of A10:1: PWR. Change it" }).click();
  await page.getByRole("textbox", { name: "Printed word of A10:1" }).fill("GND");
  await page.keyboard.press("Enter");
}

const wrong = (page: Page) =>
  page.getByRole("button", { name: "Printed word of A10:1: GND, wrong. Change it" });

test("a thread of its own checks it, and the verdict of an edit follows", async ({ page }) => {
  const failures: string[] = [];
  page.on("pageerror", (error) => failures.push(error.message));
  await openLarge(page);
  expect(page.workers().some((worker) => WORKER.test(worker.url()))).toBe(true);
  await printWrongly(page);
  await expect(wrong(page)).toBeVisible();
  await expect(page.getByText("checking…")).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await expect(wrong(page)).toHaveCount(0);
  await expect(
    page.getByRole("button", { name: "Printed word of A10:1: PWR. Change it" }),
  ).toBeVisible();
  expect(failures).toEqual([]);
});

test("where no thread can be started, the verdict comes all the same", async ({ page }) => {
  await page.addInitScript(() => {
    Reflect.set(window, "Worker", () => {
      throw new Error("not here");
    });
  });
  await openLarge(page);
  expect(page.workers()).toEqual([]);
  await printWrongly(page);
  await expect(wrong(page)).toBeVisible();
});
