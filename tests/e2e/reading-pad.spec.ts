import { expect, type Page, test } from "@playwright/test";
import { middleAtRest } from "./support/at-rest.ts";

const padOf = (page: Page) => page.getByRole("region", { name: "Reading pad" });
const barOf = (page: Page) => page.getByRole("navigation", { name: "Screens" });
const valueField = (page: Page) => padOf(page).getByRole("textbox", { name: "Value in volts" });

test.describe("by touch, on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("a tapped cavity places the lead and types nothing on the pad that comes up", async ({
    page,
  }) => {
    await page.goto("./");
    for (const mark of ["1", "2", "3", "4"]) {
      await barOf(page).getByRole("button", { name: "Reading" }).tap();
      await page.getByRole("button", { name: "Enter a reading" }).tap();
      await barOf(page).getByRole("button", { name: "Plug" }).tap();
      const cavity = page.getByRole("button", { name: new RegExp(`^Cavity ${mark}(,|$)`) });
      await expect(cavity).toBeVisible();
      await page.touchscreen.tap(...(await middleAtRest(cavity)));
      const red = padOf(page).getByRole("button", { name: /^red lead:/ });
      await expect(red).toContainText(new RegExp(`cavity ${mark}\\b`));
      await afterMadeUpClick(page);
      await expect(valueField(page)).toHaveValue("");
      await expect(red).toHaveAttribute("aria-pressed", "false");
      // The next touch is the user's own.
      await padOf(page).getByRole("button", { name: "7", exact: true }).tap();
      await expect(valueField(page)).toHaveValue("7");
      await padOf(page).getByRole("button", { name: "Take the last one back" }).tap();
      await padOf(page).getByRole("button", { name: "Close the pad" }).tap();
    }
  });

  test("a tapped pin of the diagram does the same, with a key of the pad under the finger", async ({
    page,
  }) => {
    await page.goto("./");
    await barOf(page).getByRole("button", { name: "Reading" }).tap();
    await page.getByRole("button", { name: "Enter a reading" }).tap();
    const keypad = padOf(page).getByRole("group", { name: "Keypad" });
    const [x, y] = await middleAtRest(keypad.getByRole("button", { name: "5", exact: true }));
    const finger = { x, y };
    await barOf(page).getByRole("button", { name: "Diagram" }).tap();
    const board = page.getByRole("application", { name: "Diagram board" });
    await expect(board).toBeVisible();
    const red = padOf(page).getByRole("button", { name: /^red lead:/ });
    for (let dy = 0; dy < 240 && (await board.isVisible()); dy += 12) {
      await page.touchscreen.tap(finger.x, finger.y - dy);
      await afterMadeUpClick(page);
    }
    await expect(red).not.toContainText("tap its place");
    await expect(valueField(page)).toHaveValue("");
  });

  test("the path of a finding is shown on the diagram", async ({ page }) => {
    await page.goto("./");
    await barOf(page)
      .getByRole("button", { name: /Findings|Check/ })
      .tap();
    const findings = page.getByRole("region", { name: "Findings" });
    await findings.getByRole("button", { name: "Show path" }).first().tap();
    const board = page.getByRole("application", { name: "Diagram board" });
    await expect(board).toBeVisible();
    await expect(page.getByRole("region", { name: "Diagram" })).toBeVisible();
    // Of the three layers the last shows what is chosen; nothing else would be drawn on it.
    const top = board.locator("canvas").last();
    await expect.poll(() => top.evaluate(drawnShare)).toBeGreaterThan(0.005);
  });
});

test("with both leads placed on the boards, what is typed is the value", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await page.getByRole("button", { name: "Enter a reading" }).click();
  await page.getByRole("button", { name: /^Cavity 2(,|$)/ }).click();
  await expect(padOf(page).getByRole("button", { name: /^red lead:/ })).toContainText("cavity 2");
  await page.keyboard.type("12,4");
  await expect(valueField(page)).toHaveValue("12,4");
});

/** Browsers make up the click within a few frames of the touch. */
const afterMadeUpClick = (page: Page) => page.waitForTimeout(400);

/** The share of a canvas that something is drawn on, 0 to 1. */
function drawnShare(element: Element): number {
  if (!(element instanceof HTMLCanvasElement)) return 0;
  const { data } = element.getContext("2d")?.getImageData(0, 0, element.width, element.height) ?? {
    data: [],
  };
  let drawn = 0;
  for (let i = 3; i < data.length; i += 4) if (data[i] !== 0) drawn++;
  return drawn / (element.width * element.height);
}

test("on a low screen the pad's button is whole before a lead is placed", async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.goto("./");
  await page.getByRole("button", { name: /Prove/ }).first().click();
  await page.getByRole("button", { name: "Enter a reading" }).click();
  const button = padOf(page).getByRole("button", { name: "Tap where the red lead goes." });
  await expect(button).toBeInViewport({ ratio: 1 });
});
