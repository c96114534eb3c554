import { expect, type Locator, type Page, test } from "@playwright/test";
import { boxAtRest } from "./support/at-rest.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

type At = readonly [x: number, y: number];

const PHOTO = { width: 1200, height: 800 };
/** The invented plug: 3 rows of 10 at 5 mm, photographed 3° askew, 90 pixels from cavity to cavity. */
const PITCH_MM = 5;
const PITCH_PX = 90;
const TILT = (3 * Math.PI) / 180;
const ROWS = 3;
const COLUMNS = 10;

/** Where the cavity of a row and column lies in the photo, pixels. */
const truth = (row: number, column: number): At => {
  const [x, y] = [column * PITCH_PX, row * PITCH_PX * 1.5];
  return [
    200 + x * Math.cos(TILT) - y * Math.sin(TILT),
    230 + x * Math.sin(TILT) + y * Math.cos(TILT),
  ];
};

/** A photo of the plug, drawn by the browser. */
async function photograph(page: Page): Promise<Buffer> {
  const holes = Array.from({ length: ROWS * COLUMNS }, (_, i) =>
    truth(Math.floor(i / COLUMNS), i % COLUMNS),
  );
  const url = await page.evaluate(
    ({ width, height, holes }) => {
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width, height });
      const draw = canvas.getContext("2d");
      if (!draw) throw new Error("no canvas");
      draw.fillStyle = "#8c8f88";
      draw.fillRect(0, 0, width, height);
      draw.fillStyle = "#22261f";
      for (const [x, y] of holes) {
        draw.beginPath();
        draw.arc(x ?? 0, y ?? 0, 24, 0, 7);
        draw.fill();
      }
      return canvas.toDataURL("image/png");
    },
    { ...PHOTO, holes: holes.map(([x, y]) => [x, y]) },
  );
  return Buffer.from(url.split(",")[1] ?? "", "base64");
}

/** Opens an empty job and the photo in the dialog. */
async function openPhoto(page: Page): Promise<Locator> {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByRole("button", { name: "From a photo" }).click();
  const dialog = page.getByRole("dialog", { name: "Plug from a photo" });
  const buffer = await photograph(page);
  await dialog
    .getByLabel("Choose a picture")
    .setInputFiles({ name: "plug.png", mimeType: "image/png", buffer });
  await expect(dialog.getByRole("application")).toBeVisible();
  return dialog;
}

/** From pixels of the photo to those of the page, whole photo in the frame. */
async function onScreen(dialog: Locator): Promise<(at: At) => At> {
  const box = await boxAtRest(dialog.getByRole("application").locator("img"));
  const scale = box.width / PHOTO.width;
  return ([x, y]) => [box.x + x * scale, box.y + y * scale];
}

async function dragged(page: Page, [x, y]: At, [toX, toY]: At) {
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move((x + toX) / 2, (y + toY) / 2, { steps: 4 });
  await page.mouse.move(toX, toY, { steps: 4 });
  await page.mouse.up();
}

test("thirty cavities from a photo take seven gestures and lie where the photo has them", async ({
  page,
}) => {
  let gestures = 0;
  const gesture = async (done: Promise<unknown>) => {
    gestures++;
    await done;
  };
  const dialog = await openPhoto(page);
  gestures++; // choosing the picture
  const screen = await onScreen(dialog);
  // A hand is never on the pixel: the ends are off by up to two of the photo's pixels.
  const row = (index: number, off: number) =>
    dragged(
      page,
      screen([truth(index, 0)[0] + off, truth(index, 0)[1] - off]),
      screen([truth(index, 9)[0] - off, truth(index, 9)[1] + off]),
    );
  await gesture(row(0, 1));
  await gesture(dialog.getByRole("textbox", { name: "In the row" }).fill("10"));
  // The pitch of the first row counts the cavities of the others.
  await gesture(row(1, -2));
  await gesture(row(2, 2));
  await expect(dialog.getByText("30 cavities")).toBeVisible();
  await gesture(dialog.getByRole("textbox", { name: "It measures" }).fill(String(PITCH_MM)));
  await gesture(dialog.getByRole("button", { name: "Draw it" }).click());
  await expect(dialog).toHaveCount(0);
  expect(gestures).toBe(7);

  const job = await new DiagramDesk(page).savedJob();
  const [plug] = job.plugs;
  expect(job.plugs).toHaveLength(1);
  expect(plug?.photo).toMatchObject(PHOTO);
  expect(plug?.cavities.map((cavity) => cavity.mark)).toEqual(
    Array.from({ length: 30 }, (_, i) => String(i + 1)),
  );
  const mm = PITCH_MM / PITCH_PX;
  const off = plug?.cavities.map(({ at }, i) => {
    const [x, y] = truth(Math.floor(i / COLUMNS), i % COLUMNS);
    return Math.hypot(at[0] - x * mm, at[1] - y * mm);
  });
  // Three pixels of the photo's hand, and as much again over its width for the scale from one row.
  expect(Math.max(...(off ?? [99]))).toBeLessThan(0.4);
  // The whole face is one step.
  await page.keyboard.press("Control+z");
  await expect(page.getByRole("button", { name: "From a photo", exact: true })).toBeVisible();
});

test("a grid is one drag, one fill is one step back, and a dot can be moved", async ({ page }) => {
  const dialog = await openPhoto(page);
  const screen = await onScreen(dialog);
  // A row first: it tells how the plug lies askew in the photo.
  await dragged(page, screen(truth(0, 0)), screen(truth(0, 9)));
  for (let i = 0; i < 5; i++) await page.keyboard.press("+");
  await expect(dialog.getByText("10 cavities")).toBeVisible();
  await dialog.getByRole("button", { name: "Grid" }).click();
  await dragged(page, screen(truth(1, 0)), screen(truth(2, 9)));
  await dialog.getByRole("textbox", { name: "Columns" }).fill("10");
  await dialog.getByRole("button", { name: "Put them in" }).click();
  await expect(dialog.getByText("30 cavities")).toBeVisible();
  await dialog.getByRole("button", { name: "Take the last step back" }).click();
  await expect(dialog.getByText("10 cavities")).toBeVisible();
  await dialog.getByRole("button", { name: "Do it again" }).click();
  // The last cavity is pulled away by 30 pixels.
  const [x, y] = truth(2, 9);
  await dragged(page, screen([x, y]), screen([x, y + 30]));
  await dialog.getByRole("button", { name: "Draw it" }).click();
  await expect(dialog).toHaveCount(0);
  const { plugs } = await new DiagramDesk(page).savedJob();
  const mm = PITCH_MM / PITCH_PX;
  const at = (index: number) => plugs[0]?.cavities[index]?.at ?? [0, 0];
  for (const [index, [px, py]] of [
    [14, truth(1, 4)],
    [25, truth(2, 5)],
    [29, [x, y + 30]],
  ] as const) {
    expect(Math.hypot(at(index)[0] - px * mm, at(index)[1] - py * mm)).toBeLessThan(0.3);
  }
});

test("a face goes back onto its photo: what is taken away there goes, the rest stays", async ({
  page,
}) => {
  const dialog = await openPhoto(page);
  const screen = await onScreen(dialog);
  await dragged(page, screen(truth(0, 0)), screen(truth(0, 4)));
  await dialog.getByRole("button", { name: "Draw it" }).click();
  await expect(dialog).toHaveCount(0);
  const desk = new DiagramDesk(page);
  const before = (await desk.savedJob()).plugs[0];
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Change it on its photo" }).click();
  const again = page.getByRole("dialog", { name: "X1 on its photo" });
  await again.getByRole("button", { name: "Remove" }).click();
  const [x, y] = (await onScreen(again))(truth(0, 1));
  await page.mouse.click(x, y);
  await expect(again.getByText("4 cavities")).toBeVisible();
  await again.getByRole("button", { name: "Change it" }).click();
  await expect(again).toHaveCount(0);
  const after = (await desk.savedJob()).plugs[0];
  expect(after?.cavities).toEqual(before?.cavities.filter((cavity) => cavity.mark !== "2"));
  expect(after?.photo).toEqual(before?.photo);
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Take the photo away" }).click();
  const bare = (await desk.savedJob()).plugs[0];
  expect(bare?.cavities).toEqual(after?.cavities);
  expect(bare).not.toHaveProperty("photo");
});

test("a row is filled from the keyboard alone", async ({ page }) => {
  const dialog = await openPhoto(page);
  await dialog.getByRole("application").focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("Shift+Enter");
  for (let i = 0; i < 10; i++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+Enter");
  await expect(dialog.getByText("5 cavities")).toBeVisible();
  await page.keyboard.press("-");
  await page.keyboard.press("Enter");
  await expect(dialog.getByText("4 cavities")).toBeVisible();
  await page.keyboard.press("Control+z");
  await expect(dialog.getByText("0 cavities")).toBeVisible();
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("one finger fills, two fingers zoom and fill nothing", async ({ page }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("menuitem", { name: "Jobs" }).click();
    await page.getByRole("button", { name: "New job" }).click();
    await page
      .getByRole("navigation", { name: "Screens" })
      .getByRole("button", { name: /Plug/ })
      .click();
    await page.getByRole("button", { name: "From a photo" }).click();
    const dialog = page.getByRole("dialog", { name: "Plug from a photo" });
    const buffer = await photograph(page);
    await dialog
      .getByLabel("Choose a picture")
      .setInputFiles({ name: "plug.png", mimeType: "image/png", buffer });
    const photo = dialog.getByRole("application");
    await photo.scrollIntoViewIfNeeded();
    const screen = await onScreen(dialog);
    const touch = await page.context().newCDPSession(page);
    const send = (
      type: "touchStart" | "touchMove" | "touchEnd",
      points: readonly At[],
    ): Promise<unknown> =>
      touch.send("Input.dispatchTouchEvent", {
        type,
        touchPoints: points.map(([x, y], id) => ({ x, y, id })),
      });
    const [from, to] = [screen(truth(0, 0)), screen(truth(0, 9))];
    await send("touchStart", [from]);
    await send("touchMove", [[(from[0] + to[0]) / 2, from[1]]]);
    await send("touchMove", [to]);
    await send("touchEnd", []);
    await expect(dialog.getByText("5 cavities")).toBeVisible();
    const before = (await photo.locator("img").boundingBox())?.width ?? 0;
    const [x, y] = screen([600, 500]);
    await send("touchStart", [[x - 20, y]]);
    await send("touchStart", [
      [x - 20, y],
      [x + 20, y],
    ]);
    await send("touchMove", [
      [x - 60, y],
      [x + 60, y],
    ]);
    await send("touchEnd", []);
    await expect
      .poll(async () => (await photo.locator("img").boundingBox())?.width ?? 0)
      .toBeGreaterThan(before * 2);
    await expect(dialog.getByText("5 cavities")).toBeVisible();
  });
});
