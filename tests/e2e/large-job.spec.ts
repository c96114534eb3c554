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

/** Counts what is drawn on any canvas of the page from now on. */
async function countDrawing(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counted = window as unknown as { drawn: number };
    counted.drawn = 0;
    for (const name of ["stroke", "fill", "fillText", "clearRect", "drawImage"] as const) {
      const draw = CanvasRenderingContext2D.prototype[name] as (...given: unknown[]) => void;
      Reflect.set(
        CanvasRenderingContext2D.prototype,
        name,
        function counting(this: unknown, ...given: unknown[]) {
          counted.drawn++;
          return draw.apply(this, given);
        },
      );
    }
  });
  return async () => {
    // Whatever is to be drawn is drawn within two frames of the last word of the check.
    await expect(page.getByText("checking…")).toHaveCount(0);
    return page.evaluate(async () => {
      for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
      const counted = window as unknown as { drawn: number };
      const { drawn } = counted;
      counted.drawn = 0;
      return drawn;
    });
  };
}

test("typing what no board shows draws nothing, and a changed word no more than its place", async ({
  page,
}) => {
  await openLarge(page);
  await page.getByRole("button", { name: "Open cavity 1" }).click();
  await page.getByRole("button", { name: "Measure here" }).click();
  await expect(page.getByRole("button", { name: "What should it show?" })).toBeVisible();
  const drawn = await countDrawing(page);
  // What opening set in motion comes to rest first.
  await expect.poll(drawn).toBe(0);

  await page.getByRole("textbox", { name: "Value in volts" }).pressSequentially("12.3");
  expect(await drawn()).toBe(0);
  await page.getByRole("textbox", { name: "Note" }).pressSequentially("damp");
  expect(await drawn()).toBe(0);
  await page.getByRole("textbox", { name: "Title of the job" }).fill("Another title");
  await page.keyboard.press("Enter");
  expect(await drawn()).toBe(0);

  await printWrongly(page);
  await expect(wrong(page)).toBeVisible();
  const some = await drawn();
  expect(some).toBeGreaterThan(0);
  // The whole sheet has 3,000 wires and 1,700 parts.
  expect(some).toBeLessThan(1500);
});

test("the solver is asked beside the screen, and nothing is kept before its warnings are there", async ({
  page,
}) => {
  // Answers are held back until the test lets them through.
  await page.addInitScript(() => {
    const held: (() => void)[] = [];
    const asked: string[] = [];
    const post = Worker.prototype.postMessage as (...given: unknown[]) => void;
    let isHeld = true;
    Object.assign(window, {
      asked,
      letThrough: () => {
        isHeld = false;
        for (const send of held.splice(0)) send();
      },
    });
    Worker.prototype.postMessage = function (this: Worker, ...given: unknown[]) {
      const { path, argumentList } = (given[0] ?? {}) as {
        path?: string[];
        argumentList?: { value: { about?: string } }[];
      };
      const send = () => post.apply(this, given);
      if (path?.[0] !== "answer") return send();
      asked.push(argumentList?.[2]?.value?.about ?? "");
      if (isHeld) held.push(send);
      else send();
    };
  });
  await openLarge(page);
  await page.getByRole("button", { name: "Open cavity 1" }).click();
  await expect(page.getByText("Working out the readings worth taking…")).toBeVisible();
  await page.getByRole("button", { name: "Measure here" }).click();
  await page.getByRole("textbox", { name: "Value in volts" }).fill("12.3");
  await expect(page.getByText("Wait for it: until then, anything may move.")).toBeVisible();
  const wait = page.getByRole("button", { name: "Working out what to mind…" });
  await expect(wait).toBeDisabled();
  await page.getByRole("textbox", { name: "Value in volts" }).press("Enter");
  await expect(wait).toBeVisible();

  await page.evaluate(() => (window as unknown as { letThrough: () => void }).letThrough());
  await expect(page.getByRole("button", { name: "Keep this reading" })).toBeEnabled();
  await expect(page.getByText("As drawn, nothing moves or comes on.")).toBeVisible();
  await expect(page.getByText("A healthy machine shows", { exact: false }).last()).toBeVisible();
  const asked = await page.evaluate(() => (window as unknown as { asked: string[] }).asked);
  expect(new Set(asked)).toEqual(new Set(["cavity", "setup", "reading"]));
  await page.getByRole("button", { name: "Keep this reading" }).click();
  await expect(page.getByRole("region", { name: "Readings" }).getByText("12.30 V")).toBeVisible();
});

test("a thread of its own keeps it, and what was typed last is there though the page was left at once", async ({
  page,
}) => {
  await openLarge(page);
  expect(page.workers().some((worker) => /store-worker/.test(worker.url()))).toBe(true);
  await page.getByRole("button", { name: "Printed word of A10:1: PWR. Change it" }).click();
  await page.getByRole("textbox", { name: "Printed word of A10:1" }).fill("GND");
  // No pause: the save is on its way at most.
  await page.reload();
  await expect(wrong(page)).toBeVisible();
  // Saved in peace, it is there as well, and nothing is made double.
  await page.getByRole("button", { name: "Printed word of A10:1: GND, wrong. Change it" }).click();
  await page.getByRole("textbox", { name: "Printed word of A10:1" }).fill("LAMP");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await page.reload();
  const kept = page.getByRole("button", { name: /^Printed word of A10:1: LAMP/ });
  await expect(kept).toBeVisible();
  await page.getByRole("button", { name: "Jobs" }).click();
  await expect(page.getByText("other window")).toHaveCount(0);
});
