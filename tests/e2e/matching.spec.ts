import { expect, test } from "@playwright/test";
import { boxAtRest } from "./support/at-rest.ts";
import { newDrawing } from "./support/diagram-desk.ts";

test("a pin is dragged to its cavity across the boards, and a cavity back to its pin", async ({
  page,
}) => {
  const desk = await newDrawing(page);
  await desk.drawModule([100, 60], [400, 160]);
  await desk.addPin([180, 160], "PWR");
  await desk.addPin([320, 160], "GND");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Rows and columns" }).click();
  const plug = page.getByRole("dialog", { name: "Draw a plug" });
  await plug.getByRole("textbox", { name: "Rows" }).fill("1");
  await plug.getByRole("textbox", { name: "Columns" }).fill("2");
  await plug.getByRole("button", { name: "Draw it" }).click();
  await expect(plug).toHaveCount(0);

  const cavity = async (mark: string) => {
    const box = await boxAtRest(
      page.getByRole("button", { name: new RegExp(`^Cavity ${mark}(,|$)`) }),
    );
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  };
  const board = await boxAtRest(desk.canvas);
  const drag = async (from: readonly [number, number], to: readonly [number, number]) => {
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, { steps: 4 });
    await page.mouse.move(...to, { steps: 4 });
    await page.mouse.up();
  };
  // Crosswise on purpose: equal marks must not be what ties them.
  await drag([board.x + 180, board.y + 160], await cavity("2"));
  await drag(await cavity("1"), [board.x + 320, board.y + 160]);
  const { plugs, links } = await desk.savedJob();
  const x = plugs[0]?.id;
  expect(links).toEqual([
    { pin: "A1:1", cavity: `${x}:2` },
    { pin: "A1:2", cavity: `${x}:1` },
  ]);
  await page.keyboard.press("Control+z");
  expect((await desk.savedJob()).links).toHaveLength(1);
});

test.describe("by touch, on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("a pin is untied and tied to another cavity of a list with the thumb", async ({ page }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "More", exact: true }).tap();
    await page.getByRole("menuitem", { name: "Match pins to cavities" }).tap();
    const match = page.getByRole("region", { name: "Match" });
    await match.getByRole("button", { name: "Untie A1:6" }).tap();
    await expect(match).toContainText("Left over on the plugcavity 6");
    await match.getByRole("button", { name: /^Cavity of pin A1:6: none/ }).tap();
    const cavities = page.getByRole("listbox", { name: "Cavities" });
    await expect(cavities.getByRole("option", { name: /^8/ })).toBeDisabled();
    await cavities.getByRole("option", { name: /^7/ }).tap();
    await expect(match.getByRole("button", { name: /^Cavity of pin A1:6: 7/ })).toBeVisible();
    await expect(cavities).toHaveCount(0);
  });

  test("a reading is entered with the thumb and found again in the table", async ({ page }) => {
    await page.goto("./");
    const bar = page.getByRole("navigation", { name: "Screens" });
    await bar.getByRole("button", { name: "Reading" }).tap();
    await expect(page.getByRole("region", { name: "Readings" })).toContainText("11 on Sweeper 14");
    await page.getByRole("button", { name: "Enter a reading" }).tap();
    const pad = page.getByRole("region", { name: "Reading pad" });
    await pad.getByRole("button", { name: "Pick the red lead’s place from a list" }).tap();
    await page.getByRole("combobox", { name: "Search for a place" }).fill("X1:2");
    await page.keyboard.press("Enter");
    const keypad = pad.getByRole("group", { name: "Keypad" });
    for (const key of ["2", "4", "Point", "5"]) {
      await keypad.getByRole("button", { name: key, exact: true }).tap();
    }
    await pad.getByRole("button", { name: "Keep this reading" }).tap();
    await expect(page.getByRole("region", { name: "Readings" })).toContainText("12 on Sweeper 14");
    await page.reload();
    await bar.getByRole("button", { name: "Reading" }).tap();
    await expect(page.getByRole("region", { name: "Readings" })).toContainText("24.50 V");
  });
});
