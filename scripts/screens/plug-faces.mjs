import { fileURLToPath } from "node:url";

/**
 * Steps on the plug board for the screens of its faces. Each starts where the board shows a plug,
 * or the ways to draw one.
 *
 * @typedef {import("@playwright/test").Page} Page
 */

const PLUG_PHOTO = "../../sample-data/sweeper/images/x1-wires.jpg";
const PLUG_PHOTO_WIDTH = 1280;
/** A spot of the red wire with a white stripe, pixels of that picture. */
const STRIPED_WIRE = [300, 210];

const COLUMNS = 10;
/** Pixels of the drawn photo. @param {number} row @param {number} column */
const hole = (row, column) => [200 + column * 88 - row * 6, 230 + column * 5 + row * 135];

/** A photo of an invented plug: three rows of ten, a little askew. @param {Page} page */
async function photograph(page) {
  const holes = [0, 1, 2].flatMap((row) =>
    Array.from({ length: COLUMNS }, (_, column) => hole(row, column)),
  );
  const url = await page.evaluate(
    (points) => {
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width: 1200, height: 760 });
      const draw = canvas.getContext("2d");
      if (!draw) throw new Error("no canvas");
      draw.fillStyle = "#b9b2a4";
      draw.fillRect(0, 0, 1200, 760);
      draw.save();
      draw.translate(600, 390);
      draw.rotate(0.055);
      draw.fillStyle = "#3c4046";
      draw.beginPath();
      draw.roundRect(-490, -250, 980, 500, 50);
      draw.roundRect(-130, -310, 260, 80, 20);
      draw.fill();
      draw.restore();
      for (const [x, y] of points) {
        draw.fillStyle = "#777d86";
        draw.beginPath();
        draw.arc(x, y, 31, 0, 7);
        draw.fill();
        draw.fillStyle = "#16181b";
        draw.beginPath();
        draw.arc(x, y, 23, 0, 7);
        draw.fill();
      }
      return canvas.toDataURL("image/png");
    },
    /** @type {[number, number][]} */ (holes),
  );
  return Buffer.from(url.split(",")[1] ?? "", "base64");
}

/** Two rows put in over a photo, and a third being counted. @param {Page} page */
export async function fillPhoto(page) {
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Another plug from a photo" }).click();
  const dialog = page.getByRole("dialog", { name: "Plug from a photo" });
  const buffer = await photograph(page);
  await dialog
    .getByLabel("Choose a picture")
    .setInputFiles({ name: "plug.png", mimeType: "image/png", buffer });
  const photo = dialog.getByRole("application");
  await photo.scrollIntoViewIfNeeded();
  const box = await photo.locator("img").boundingBox();
  if (!box) throw new Error("no photo");
  const scale = box.width / 1200;
  for (const row of [0, 1, 2]) {
    const [x = 0, y = 0] = hole(row, 0);
    const [toX = 0, toY = 0] = hole(row, COLUMNS - 1);
    await page.mouse.move(box.x + x * scale, box.y + y * scale);
    await page.mouse.down();
    await page.mouse.move(box.x + toX * scale, box.y + toY * scale, { steps: 6 });
    await page.mouse.up();
    if (row === 0) for (let more = 0; more < 5; more++) await page.keyboard.press("+");
  }
}

/** The face drawn from that photo. @param {Page} page */
export async function drawFromPhoto(page) {
  await fillPhoto(page);
  await page.getByRole("button", { name: "Draw it" }).click();
  await page.getByRole("dialog").waitFor({ state: "hidden" });
  await page.waitForTimeout(500);
}

/** A wire tapped on the sample's made picture of the plug. @param {Page} page */
export async function tapWire(page) {
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Wire colours from a photo" }).click();
  const dialog = page.getByRole("dialog", { name: /^Wire in cavity/ });
  await dialog
    .getByLabel("Choose a picture")
    .setInputFiles(fileURLToPath(new URL(PLUG_PHOTO, import.meta.url)));
  const photo = dialog.getByRole("application").locator("img");
  await photo.waitFor();
  await dialog.getByText(/^White (taken|guessed)/).waitFor();
  const box = await photo.boundingBox();
  if (!box) throw new Error("no photo");
  const [x = 0, y = 0] = STRIPED_WIRE;
  const scale = box.width / PLUG_PHOTO_WIDTH;
  await page.mouse.click(box.x + x * scale, box.y + y * scale);
  await dialog.getByRole("group", { name: /^Tracer/ }).waitFor();
  await page.waitForTimeout(500);
}

/** @param {Page} page */
export async function openLibrary(page) {
  await page.getByRole("button", { name: "More for plugs" }).click();
  await page.getByRole("menuitem", { name: "Draw another plug" }).click();
  await page.getByRole("button", { name: "Choose from the library" }).click();
}

/** A face of a standard, with its published pins beside it. @param {Page} page */
export async function chooseStandard(page) {
  await openLibrary(page);
  await page.getByRole("button", { name: /ISO 11446/ }).click();
}

/** Two views of the plug, one cavity lit in both. @param {Page} page */
export async function showHalves(page) {
  await page.getByRole("button", { name: "Two views side by side" }).click();
  await page.waitForTimeout(300);
  await page
    .getByRole("button", { name: /^Cavity 4,/ })
    .first()
    .click();
  await page.waitForTimeout(800);
}

/** The same beside the half that it plugs into. @param {Page} page */
export async function showOtherHalf(page) {
  await showHalves(page);
  await page.getByRole("button", { name: "The other half" }).click();
  await page.waitForTimeout(800);
}
