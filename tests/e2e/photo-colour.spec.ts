import { expect, type Locator, type Page, test } from "@playwright/test";
import { boxAtRest } from "./support/at-rest.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

type At = readonly [x: number, y: number];

/** Wires that lie across the photo, from its top: base and stripe in the light of a filament lamp. */
const WIRES = [
  { base: "#cd4a14", stripe: null, y: 150 },
  { base: "#2f753a", stripe: "#ffc208", y: 260 },
  { base: "#1e1a12", stripe: null, y: 370 },
] as const;
const PHOTO = { width: 900, height: 600 };
const CARD: At = [800, 520];

/** A photo of wires over a bench, drawn by the browser. */
async function photograph(page: Page): Promise<Buffer> {
  const url = await page.evaluate(
    ({ width, height, wires, card }) => {
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width, height });
      const draw = canvas.getContext("2d");
      if (!draw) throw new Error("no canvas");
      draw.fillStyle = "#9c845a";
      draw.fillRect(0, 0, width, height);
      for (const { base, stripe, y } of wires) {
        draw.fillStyle = base;
        draw.fillRect(0, y - 26, width, 52);
        if (!stripe) continue;
        draw.fillStyle = stripe;
        draw.fillRect(0, y - 8, width, 14);
      }
      // White paper in that light.
      draw.fillStyle = "#f5d59c";
      draw.fillRect((card[0] ?? 0) - 60, (card[1] ?? 0) - 50, 120, 100);
      return canvas.toDataURL("image/png");
    },
    { ...PHOTO, wires: WIRES.map((wire) => ({ ...wire })), card: [...CARD] },
  );
  return Buffer.from(url.split(",")[1] ?? "", "base64");
}

/** Opens an invented plug of four cavities and a photo of its wires. */
async function openWires(page: Page): Promise<Locator> {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Wire colours from a photo" }).click();
  const dialog = page.getByRole("dialog", { name: /^Wire in cavity/ });
  const buffer = await photograph(page);
  await dialog
    .getByLabel("Choose a picture")
    .setInputFiles({ name: "wires.png", mimeType: "image/png", buffer });
  await expect(dialog.getByRole("application")).toBeVisible();
  return dialog;
}

async function tap(page: Page, dialog: Locator, [x, y]: At) {
  const box = await boxAtRest(dialog.getByRole("application").locator("img"));
  const scale = box.width / PHOTO.width;
  await page.mouse.click(box.x + x * scale, box.y + y * scale);
}

test("a wire is tapped, its colours are proposed, and nothing is noted until the user says so", async ({
  page,
}) => {
  const dialog = await openWires(page);
  await dialog.getByLabel("Cavity").selectOption("2");
  await dialog.getByRole("button", { name: "White is here" }).click();
  await tap(page, dialog, CARD);
  await expect(dialog.getByText("White as you pointed it out.")).toBeVisible();

  await tap(page, dialog, [300, WIRES[1].y + 16]);
  const base = dialog.getByRole("group", { name: /^Base/ });
  const tracer = dialog.getByRole("group", { name: /^Tracer/ });
  // The ring lies beside the stripe, which is seen all the same.
  await expect(base.getByRole("button").first()).toHaveText("GN green");
  await expect(tracer.getByRole("button").first()).toHaveText("YE yellow");
  const buttons = await base.getByRole("button").all();
  for (const button of [...buttons, ...(await tracer.getByRole("button").all())]) {
    expect((await button.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44);
  }
  const desk = new DiagramDesk(page);
  await base.getByRole("button", { name: "GN green" }).click();
  await tracer.getByRole("button", { name: "YE yellow" }).click();
  await dialog.getByRole("button", { name: "Note GN/YE in cavity 2" }).click();
  await expect(dialog.getByText("Noted GN/YE, green with a yellow tracer")).toBeVisible();
  // The next cavity is at hand; its wire is not noted by looking at it.
  await expect(page.getByRole("dialog", { name: "Wire in cavity 3" })).toBeVisible();
  await tap(page, dialog, [300, WIRES[0].y]);
  await expect(base.getByRole("button").first()).toBeVisible();
  await dialog.getByRole("button", { name: "Close" }).click();

  const job = await desk.savedJob();
  const wires = job.machines[0]?.wires ?? [];
  const plug = job.plugs[0]?.id;
  expect(wires.find((wire) => wire.cavity === `${plug}:2`)?.colour).toEqual({
    base: "GN",
    tracer: "YE",
  });
  // One edit: one step takes it back.
  await page.keyboard.press("Control+z");
  const back = (await desk.savedJob()).machines[0]?.wires ?? [];
  expect(back.find((wire) => wire.cavity === `${plug}:2`)?.colour).not.toEqual({
    base: "GN",
    tracer: "YE",
  });
});

test("a wire is asked about from the keyboard alone", async ({ page }) => {
  const dialog = await openWires(page);
  await dialog.getByRole("application").focus();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("group", { name: /^Base/ })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  // The keys go back to what opened it, though the menu's entry is gone.
  await expect(page.getByRole("button", { name: "More for plugs" })).toBeFocused();
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("the camera is offered, two fingers zoom, and the newest of two taps is answered", async ({
    page,
  }) => {
    await withoutFilePickers(page);
    await page.goto("./");
    await page
      .getByRole("navigation", { name: "Screens" })
      .getByRole("button", { name: /Plug/ })
      .click();
    await page.getByRole("button", { name: "More for plugs" }).click();
    await page.getByRole("menuitem", { name: "Wire colours from a photo" }).click();
    const dialog = page.getByRole("dialog", { name: /^Wire in cavity/ });
    await expect(dialog.getByRole("button", { name: "Take a photo" })).toBeVisible();
    await expect(dialog.getByText("The picture is only looked at, not kept.")).toBeVisible();
    await expect(dialog.getByText(/^Tap a wire/)).toHaveCount(0);
    const buffer = await photograph(page);
    await dialog
      .getByLabel("Photo from the camera")
      .setInputFiles({ name: "wires.png", mimeType: "image/png", buffer });
    const photo = dialog.getByRole("application");
    await expect(photo).toBeVisible();
    const before = (await boxAtRest(photo.locator("img"))).width;
    const box = await boxAtRest(photo);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const touch = await page.context().newCDPSession(page);
    const send = (type: "touchStart" | "touchMove" | "touchEnd", points: readonly At[]) =>
      touch.send("Input.dispatchTouchEvent", {
        type,
        touchPoints: points.map(([px, py], id) => ({ x: px, y: py, id })),
      });
    await send("touchStart", [[x - 25, y]]);
    for (const off of [25, 40, 55]) {
      await send(off === 25 ? "touchStart" : "touchMove", [
        [x - off, y],
        [x + off, y],
      ]);
    }
    await send("touchEnd", []);
    await expect
      .poll(async () => (await photo.locator("img").boundingBox())?.width ?? 0)
      .toBeGreaterThan(before * 1.8);
    // Nothing was asked by the two fingers.
    await expect(dialog.getByText("Tap a wire on the photo.")).toBeVisible();
    await dialog.getByRole("button", { name: "Show the picture smaller" }).click();
    await dialog.getByRole("button", { name: "Show the picture smaller" }).click();
    await tap(page, dialog, [450, WIRES[2].y]);
    await tap(page, dialog, [450, WIRES[1].y]);
    const base = dialog.getByRole("group", { name: /^Base/ });
    await expect(base.getByRole("button", { name: "GN green" })).toBeVisible();
    await expect(base.getByRole("button", { name: "BK black" })).toHaveCount(0);
  });
});
