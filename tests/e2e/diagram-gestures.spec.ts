import { expect, type Page, test } from "@playwright/test";
import { boxAtRest } from "./support/at-rest.ts";
import { newDrawing } from "./support/diagram-desk.ts";

type View = readonly [x: number, y: number];

/** A job with one sheet without a picture: a pixel of the board is a pixel of the sheet. */
async function blankSheet(page: Page) {
  const desk = await newDrawing(page);
  await expect(desk.canvas).toBeVisible();
  const onScreen = async ([x, y]: View): Promise<[number, number]> => {
    const box = await boxAtRest(desk.canvas);
    return [box.x + x, box.y + y];
  };
  return {
    desk,
    diagram: async () => (await desk.savedJob()).diagram,
    click: ([x, y]: View, held: { button?: "right"; modifiers?: ["Shift"] } = {}) =>
      desk.canvas.click({ position: { x, y }, ...held }),
    doubleClick: ([x, y]: View) => desk.canvas.dblclick({ position: { x, y } }),
    drag: async (from: View, to: View, button: "left" | "middle" = "left") => {
      const [a, b] = [await onScreen(from), await onScreen(to)];
      await page.mouse.move(...a);
      await page.mouse.down({ button });
      await page.mouse.move((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, { steps: 3 });
      await page.mouse.move(...b, { steps: 3 });
      await page.mouse.up({ button });
    },
  };
}

test("wires are laid by clicks and by drags, join in splices, go on untraced, and back out by Escape", async ({
  page,
}) => {
  const { desk, diagram, click, drag } = await blankSheet(page);
  await desk.place("fuse", "F1", [120, 80]);
  await desk.place("lamp", "P1", [400, 80]);
  await desk.place("ground", "X1", [250, 200]);
  await page.keyboard.press("w");
  await click([150, 80]);
  await click([370, 80]);
  await drag([250, 200], [250, 80]);
  await click([90, 80]);
  await click([40, 80]);
  await click([40, 200]);
  await click([40, 200]);
  let { parts, wires } = await diagram();
  const splice = parts.find((part) => part.kind === "splice");
  const open = parts.find((part) => part.kind === "offpage");
  expect(
    wires.filter((wire) => `${wire.from} ${wire.to}`.includes(`${splice?.id}:1`)),
  ).toHaveLength(3);
  expect(wires.at(-1)).toMatchObject({ from: "F1:1", to: `${open?.id}:1` });
  expect(wires).toHaveLength(4);

  await page.keyboard.press("w");
  await click([430, 80]);
  await click([480, 120]);
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Draw wires", exact: true })).toHaveAttribute(
    "aria-pressed",
    "true",
  );
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Select", exact: true })).toHaveAttribute(
    "aria-pressed",
    "true",
  );

  await page.keyboard.press("Escape");
  await click([250, 150]);
  await page.keyboard.press("Delete");
  ({ parts, wires } = await diagram());
  expect(wires).toHaveLength(2);
  expect(parts.some((part) => part.kind === "splice")).toBe(false);
});

test("parts are chosen by a box, moved with their wires, copied, turned, renamed and taken back", async ({
  page,
}) => {
  const { desk, diagram, click, doubleClick, drag } = await blankSheet(page);
  await desk.place("fuse", "F1", [120, 80]);
  await desk.place("lamp", "P1", [320, 160]);
  await page.keyboard.press("w");
  await click([150, 80]);
  await click([290, 160]);
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  const before = await diagram();

  await drag([30, 30], [450, 230]);
  await drag([120, 80], [150, 100]);
  const moved = await diagram();
  const gone = moved.parts.map((part, index) => {
    const at = before.parts[index]?.at ?? [0, 0];
    return [part.at[0] - at[0], part.at[1] - at[1]];
  });
  expect(gone).toEqual([
    [30, 20],
    [30, 20],
  ]);
  expect(moved.wires[0]?.path).toEqual(before.wires[0]?.path?.map(([x, y]) => [x + 30, y + 20]));
  await page.keyboard.press("Control+z");
  expect(await diagram()).toEqual(before);

  await page.keyboard.press("Escape");
  await click([120, 80]);
  await page.keyboard.press("r");
  await page.keyboard.press("Control+d");
  const doubled = await diagram();
  expect(doubled.parts.map((part) => [part.id, part.turn])).toEqual([
    ["F1", 90],
    ["P1", 0],
    ["F2", 90],
  ]);

  await doubleClick([320, 160]);
  const words = page.getByRole("form", { name: "P1" });
  await words.getByRole("textbox", { name: "Id" }).fill("P9");
  await page.keyboard.press("Enter");
  const renamed = await diagram();
  expect(renamed.wires[0]?.to).toBe("P9:1");

  await drag([500, 60], [540, 120], "middle");
  expect(await diagram()).toEqual(renamed);
  // The sheet went along with the pointer, and so did the fuse.
  await click([160, 140]);
  await desk.canvas.focus();
  await page.keyboard.press("Shift+F10");
  await expect(page.getByRole("menuitem", { name: /^Rename/ })).toBeVisible();
});

test("a module is drawn to size, its pins laid along the edge, slid and typed, its box pulled larger", async ({
  page,
}) => {
  const { desk, diagram, click, doubleClick, drag } = await blankSheet(page);
  await desk.drawModule([200, 60], [400, 200]);
  await page.keyboard.press("Escape");
  for (const [at, word] of [
    [[200, 90], "PWR"],
    [[200, 160], "GND"],
    [[400, 100], "OUT"],
  ] as const) {
    await doubleClick(at);
    await page.getByRole("textbox", { name: "Printed word", exact: true }).fill(word);
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
  }
  const { parts } = await diagram();
  expect(parts[0]).toMatchObject({ id: "A1", size: [200, 140] });
  expect(parts[0]?.kind === "module" && parts[0].pins).toMatchObject([
    { id: "1", printed: "PWR", at: [-100, -40] },
    { id: "2", printed: "GND", at: [-100, 30] },
    { id: "3", printed: "OUT", at: [100, -30] },
  ]);

  // The grip of a chosen pin stands inside the box beside it.
  await click([400, 100]);
  await drag([374, 100], [380, 150]);
  await page.keyboard.press("Escape");
  await click([300, 180]);
  await drag([400, 200], [450, 260]);
  const after = (await diagram()).parts[0];
  expect(after).toMatchObject({ size: [250, 200] });
  const out = after?.kind === "module" ? after.pins[2] : undefined;
  expect(out?.at?.[0]).toBe(125);
  expect(out?.at?.[1]).toBeCloseTo((20 * 200) / 140, 0);
});
