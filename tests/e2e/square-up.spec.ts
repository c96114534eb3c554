import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { distance, type Point } from "../../src/base/index.ts";
import { type JobFile, pictureType, readJobFile, type Sheet } from "../../src/job/index.ts";
import { planOf, type Squaring, toResult } from "../../src/scan/index.ts";
import { squaringOf } from "../../src/session/scan/index.ts";
import { boxAtRest } from "./support/at-rest.ts";
import { withoutFilePickers } from "./support/diagram-desk.ts";
import { type PagePhoto, photoOfPage } from "./support/page-photo.ts";

let photo: PagePhoto;

test.beforeAll(async () => {
  photo = await photoOfPage();
});

/** Opens an empty job with a picture on its sheet. */
async function importPicture(page: Page, file: PagePhoto["file"]): Promise<void> {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  await page.getByRole("button", { name: "New job" }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles(file);
}

const importPhoto = (page: Page) => importPicture(page, photo.file);

const offer = (page: Page) => page.getByRole("region", { name: "Offer to square up" });
const deskOf = (page: Page) => page.getByRole("dialog", { name: "Square up and clean" });

async function acceptOffer(page: Page): Promise<Locator> {
  await offer(page).getByRole("button", { name: "Square up this picture?" }).click();
  const desk = deskOf(page);
  await expect(desk.getByText(/page’s edge was found/)).toBeVisible();
  return desk;
}

async function use(desk: Locator): Promise<void> {
  await desk.getByRole("button", { name: "Use this picture" }).click();
  await expect(desk).toHaveCount(0, { timeout: 60_000 });
}

/** The job with its pictures, as the user would save and send it. */
async function saved(page: Page): Promise<JobFile> {
  await page.getByRole("button", { name: "Jobs" }).click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save to a file…" }).click(),
  ]);
  const read = readJobFile(await readFile(await download.path()), "job.pintruth");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

const sheetOf = ({ job }: JobFile): Sheet => {
  const [sheet] = job.diagram.sheets;
  if (!sheet) throw new Error("no sheet");
  return sheet;
};

/** The stored picture, which must be as large as the job says it is. */
function pictureOf({ pictures }: JobFile, image: Sheet["image"]) {
  const picture = image && pictures.get(image.file);
  if (!picture) throw new Error("the picture is not in the file");
  const header = pictureType(picture.bytes, image.file);
  expect(header).toMatchObject({ ok: true, value: { width: image.width, height: image.height } });
  return picture;
}

test("a photo is squared up by what is found on it, cleaned, and the original kept", async ({
  page,
}) => {
  await importPhoto(page);
  await expect(offer(page)).toContainText("The page does not fill this picture.");
  const desk = await acceptOffer(page);
  await desk.getByText("Clean", { exact: true }).click();
  await desk.getByLabel("Make shadows and paper white").check();
  await desk.getByLabel("Black and white").check();
  await use(desk);
  await expect(offer(page)).toHaveCount(0);

  const file = await saved(page);
  const sheet = sheetOf(file);
  expect(sheet.original).toMatchObject({ width: photo.width, height: photo.height });
  expect(Buffer.from(pictureOf(file, sheet.original).bytes).equals(photo.file.buffer)).toBe(true);
  const off = photo.corners.map((corner, n) => distance(corner, sheet.corners?.[n] ?? [-99, -99]));
  expect(Math.max(...off)).toBeLessThan(1.5);
  expect(sheet.cleaning?.map(({ does }) => does)).toEqual(["flatten", "black-and-white"]);
  // The demo's page is an A3 sheet at 200 dpi; a camera tells its sides' ratio, not its size.
  const { width, height } = sheet.image ?? { width: 0, height: 1 };
  expect(width / height).toBeGreaterThan(1.35);
  expect(width / height).toBeLessThan(1.47);
  expect(width).toBeGreaterThan(1300);
  const made = pictureOf(file, sheet.image);
  expect(made.type).toBe("image/png");
  // A bit a pixel, and lines are far fewer than paper.
  expect(made.bytes.length).toBeLessThan((width * height) / 8);
  expect(await inkOf(page, made.bytes)).toEqual({ shades: 2, isSomeInk: true });

  await page.keyboard.press("Control+z");
  const before = sheetOf(await saved(page));
  expect(before).toEqual({ id: sheet.id, title: sheet.title, image: sheet.original });
  await page.keyboard.press("Control+Shift+z");
  expect(sheetOf(await saved(page))).toEqual(sheet);
});

/** How many shades a picture has, and whether the dark ones are a few hundredths of it, as ink is. */
async function inkOf(page: Page, bytes: Uint8Array) {
  return page.evaluate(
    async (list) => {
      const blob = new Blob([Uint8Array.from(list)], { type: "image/png" });
      const bitmap = await createImageBitmap(blob);
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const ink = canvas.getContext("2d");
      if (!ink) throw new Error("no canvas");
      ink.drawImage(bitmap, 0, 0);
      const { data } = ink.getImageData(0, 0, bitmap.width, bitmap.height);
      const shades = new Set<number>();
      let dark = 0;
      for (let at = 0; at < data.length; at += 4) {
        shades.add(data[at] ?? 0);
        if ((data[at] ?? 0) < 128) dark++;
      }
      const share = dark / (data.length / 4);
      return { shades: shades.size, isSomeInk: share > 0.01 && share < 0.15 };
    },
    [...bytes],
  );
}

test("what is drawn over a photo stays over it, to the original and back", async ({ page }) => {
  await importPhoto(page);
  await offer(page).getByRole("button", { name: "Leave it as it is" }).click();
  await page.getByRole("button", { name: "Parts", exact: true }).click();
  await page.getByRole("searchbox", { name: "Find a part" }).fill("fuse");
  await page.keyboard.press("Enter");
  const board = page.getByRole("application", { name: "Diagram board" });
  await board.click({ position: { x: 240, y: 180 } });
  await page.keyboard.press("Escape");
  const first = (await saved(page)).job.diagram.parts[0];
  await page.getByRole("button", { name: "Scan desk", exact: true }).click();
  await page.getByRole("button", { name: "Square up", exact: true }).click();
  const desk = deskOf(page);
  await expect(desk.getByText(/page’s edge was found/)).toBeVisible();
  await expect(desk.getByRole("button", { name: "Mirror" })).toBeDisabled();
  await desk.getByRole("button", { name: "Right", exact: true }).click();
  await use(desk);

  const file = await saved(page);
  const squaring: Squaring = squaringOf(sheetOf(file));
  expect(squaring.quarters).toBe(1);
  const plan = planOf(squaring, photo);
  const there = plan && first && toResult(plan, first.at);
  const [moved] = file.job.diagram.parts;
  expect(distance(there ?? [0, 0], moved?.at ?? [99, 99])).toBeLessThan(0.1);
  expect(moved?.turn).toBe(((first?.turn ?? 0) + 90) % 360);

  await page.getByRole("button", { name: "Clean", exact: true }).click();
  await expect(desk.getByRole("button", { name: "Hold to compare" })).toBeVisible();
  await desk.getByRole("button", { name: "Back to the original" }).click();
  await use(desk);
  const back = await saved(page);
  expect(sheetOf(back)).not.toHaveProperty("original");
  expect(sheetOf(back).image).toMatchObject({ width: photo.width, height: photo.height });
  const [again] = back.job.diagram.parts;
  expect(distance(again?.at ?? [0, 0], first?.at ?? [99, 99])).toBeLessThan(0.5);
  expect(again?.turn).toBe(first?.turn);
});

test("a picture that its page fills already is not asked about", async ({ page }) => {
  await importPhoto(page);
  const begun = Date.now();
  await expect(offer(page)).toBeVisible();
  const patience = 1000 + 2 * (Date.now() - begun);
  const buffer = await straightPage(page);
  await page
    .getByLabel("Picture or PDF of the diagram")
    .setInputFiles({ ...photo.file, name: "straight.jpg", buffer });
  await expect(page.getByRole("tab", { name: "straight" })).toHaveAttribute(
    "aria-selected",
    "true",
  );
  // Longer than it took to ask about the other one.
  await page.waitForTimeout(patience);
  await expect(offer(page)).toHaveCount(0);
  await page.getByRole("tab", { name: "page" }).click();
  await expect(offer(page)).toBeVisible();
});

/** A page as a scanner gives it: no table around it, its frame level. */
async function straightPage(page: Page): Promise<Buffer> {
  const url = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    Object.assign(canvas, { width: 1400, height: 1000 });
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no canvas");
    pen.fillStyle = "#f4f2ec";
    pen.fillRect(0, 0, 1400, 1000);
    pen.lineWidth = 3;
    pen.strokeRect(60, 60, 1280, 880);
    for (const x of [300, 640, 980]) pen.strokeRect(x, 300, 140, 240);
    return canvas.toDataURL("image/jpeg", 0.92);
  });
  return Buffer.from(url.split(",")[1] ?? "", "base64");
}

test("corners are moved by keys, the page levelled along a line and cut by a box", async ({
  page,
}) => {
  await importPhoto(page);
  const desk = await acceptOffer(page);
  const corner = desk.getByRole("button", { name: /^Corner top left/ });
  await corner.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowDown");
  await expect(desk.getByText("Set by hand.")).toBeVisible();
  await desk.getByRole("button", { name: "Take the last step back" }).click();
  await expect(desk.getByText(/page’s edge was found/)).toBeVisible();
  await desk.getByRole("button", { name: "Do it again" }).click();

  await desk.getByText("Level", { exact: true }).click();
  const stage = desk.getByRole("group", { name: "What the picture becomes" });
  const box = await boxAtRest(stage);
  const at = (x: number, y: number): [number, number] => [
    box.x + x * box.width,
    box.y + y * box.height,
  ];
  const drag = async (from: Point, to: Point) => {
    await page.mouse.move(...(from as [number, number]));
    await page.mouse.down();
    await page.mouse.move(...(to as [number, number]), { steps: 6 });
    await page.mouse.up();
  };
  const [x, y] = at(0.3, 0.4);
  await drag([x, y], [x + 200, y + 10]);
  // 10 down in 200 is 2.86 degrees clockwise, to be turned back.
  await expect(desk.getByRole("slider", { name: "Tilt" })).toHaveValue("-2.9");
  await desk.getByText("Crop", { exact: true }).first().click();
  await drag(at(0.3, 0.3), at(0.7, 0.7));
  await expect(desk.getByText(/px stay\./)).toBeVisible();
  await use(desk);

  const sheet = sheetOf(await saved(page));
  const [cornerX, cornerY] = sheet.corners?.[0] ?? [0, 0];
  expect(Math.abs(cornerX - (photo.corners[0][0] + 3))).toBeLessThan(1.5);
  expect(Math.abs(cornerY - (photo.corners[0][1] + 10))).toBeLessThan(1.5);
  expect(sheet.squaring?.level).toBeCloseTo(-2.86, 1);
  const { crop } = sheet.squaring ?? {};
  expect(sheet.image).toMatchObject({
    width: (crop?.right ?? 0) - (crop?.left ?? 0) + 1,
    height: (crop?.bottom ?? 0) - (crop?.top ?? 0) + 1,
  });
});

test("a desk that is left changes nothing", async ({ page }) => {
  await importPhoto(page);
  const desk = await acceptOffer(page);
  await page.keyboard.press("Escape");
  await expect(desk).toHaveCount(0);
  const file = await saved(page);
  expect(sheetOf(file)).not.toHaveProperty("original");
  expect(file.pictures.size).toBe(1);
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("a finger drags a corner, and its targets are as large as a thumb", async ({ page }) => {
    await withoutFilePickers(page);
    await page.goto("./");
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("menuitem", { name: "Jobs" }).click();
    await page.getByRole("button", { name: "New job" }).click();
    await page
      .getByRole("navigation", { name: "Screens" })
      .getByRole("button", { name: /Diagram/ })
      .click();
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Choose a file" }).click(),
    ]);
    await chooser.setFiles(photo.file);
    const desk = await acceptOffer(page);
    const corner = desk.getByRole("button", { name: /^Corner bottom right/ });
    const box = await boxAtRest(corner);
    expect(box.width).toBeGreaterThanOrEqual(44);
    expect(box.height).toBeGreaterThanOrEqual(44);
    for (const button of await desk.getByRole("button").all()) {
      const size = await button.boundingBox();
      expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
    const [x, y] = [box.x + 22, box.y + 22];
    const touch = await page.context().newCDPSession(page);
    const send = (type: "touchStart" | "touchMove" | "touchEnd", points: readonly Point[]) =>
      touch.send("Input.dispatchTouchEvent", {
        type,
        touchPoints: points.map(([px, py], id) => ({ x: px, y: py, id })),
      });
    // Taken hold of a little beside it: the corner keeps its distance to the finger.
    await send("touchStart", [[x + 8, y + 6]]);
    await send("touchMove", [[x - 2, y - 9]]);
    await send("touchMove", [[x - 12, y - 14]]);
    await expect(desk.locator("canvas[data-side]")).toHaveAttribute("data-side", "left");
    await send("touchEnd", []);
    const after = await corner.boundingBox();
    expect(after?.x).toBeCloseTo(box.x - 20, 0);
    expect(after?.y).toBeCloseTo(box.y - 20, 0);
    await expect(desk.getByText("Set by hand.")).toBeVisible();
  });
});
