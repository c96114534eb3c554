/**
 * The desk where a picture is squared up and cleaned, reached by a photo of the demo's page.
 *
 * @typedef {import("@playwright/test").Page} Page
 */

const SIZE = { width: 1500, height: 1100 };
/** From a point of the photo, 0 to 1 each way, to the page: the inverse of how a camera saw it. */
const CAMERA = [1.26, 0.1, -0.17, -0.09, 1.46, -0.13, 0.02, 0.14];

/** The demo's page askew on a dark bench. @param {Page} page */
async function photograph(page) {
  const url = await page.evaluate(
    async ({ width, height, camera }) => {
      const scan = await (await fetch("sample-data/sweeper/images/sweeper-sheet-7.jpg")).blob();
      const bitmap = await createImageBitmap(scan, { resizeWidth: 1754, resizeQuality: "high" });
      const canvas = document.createElement("canvas");
      const pen = canvas.getContext("2d", { willReadFrequently: true });
      if (!pen) throw new Error("no canvas");
      Object.assign(canvas, { width: bitmap.width, height: bitmap.height });
      pen.drawImage(bitmap, 0, 0);
      const from = pen.getImageData(0, 0, bitmap.width, bitmap.height);
      const photo = new ImageData(width, height);
      const [a, b, c, d, e, f, g, h] =
        /** @type {[number, number, number, number, number, number, number, number]} */ (camera);
      /** @param {number} x @param {number} y @param {number} part */
      const bench = (x, y, part) => {
        const isOn = x >= 0 && y >= 0 && x < from.width && y < from.height;
        return isOn ? (from.data[4 * (y * from.width + x) + part] ?? 0) : 62 - 6 * part;
      };
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          const [u, v] = [x / width, y / height];
          const w = g * u + h * v + 1;
          const across = (from.width * (a * u + b * v + c)) / w;
          const down = (from.height * (d * u + e * v + f)) / w;
          const [column, row] = [Math.floor(across), Math.floor(down)];
          const [east, south] = [across - column, down - row];
          const at = 4 * (y * width + x);
          for (let part = 0; part < 3; part++) {
            const upper =
              bench(column, row, part) * (1 - east) + bench(column + 1, row, part) * east;
            const lower =
              bench(column, row + 1, part) * (1 - east) + bench(column + 1, row + 1, part) * east;
            photo.data[at + part] = (upper * (1 - south) + lower * south) * (1 - 0.25 * u);
          }
          photo.data[at + 3] = 255;
        }
      }
      Object.assign(canvas, { width, height });
      pen.putImageData(photo, 0, 0);
      return canvas.toDataURL("image/jpeg", 0.9);
    },
    { ...SIZE, camera: CAMERA },
  );
  return Buffer.from(url.split(",")[1] ?? "", "base64");
}

/** A new job's sheet with that photo, its page found. @param {Page} page */
async function found(page) {
  const buffer = await photograph(page);
  const jobs = page.getByRole("button", { name: "Jobs" });
  if (await jobs.count()) await jobs.first().click();
  else {
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("menuitem", { name: "Jobs" }).click();
  }
  await page.getByRole("button", { name: "New job" }).first().click();
  const screens = page.getByRole("navigation", { name: "Screens" });
  if (await screens.count()) await screens.getByRole("button", { name: /Diagram/ }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles({ name: "page.jpg", mimeType: "image/jpeg", buffer });
  await page.getByRole("button", { name: "Square up this picture?" }).waitFor();
}

/** The offer under the board. @param {Page} page */
export async function offerSquaring(page) {
  await found(page);
  await page.waitForTimeout(800);
}

/** The corners found, one of them chosen. @param {Page} page */
export async function squareUp(page) {
  await found(page);
  await page.getByRole("button", { name: "Square up this picture?" }).click();
  await page.getByText(/edge was found/).waitFor();
  await page.getByRole("button", { name: /^Corner top left/ }).focus();
  await page.waitForTimeout(800);
}

/** The page squared up, its paper white. @param {Page} page */
export async function cleanPage(page) {
  await squareUp(page);
  const desk = page.getByRole("dialog", { name: "Square up and clean" });
  await desk.getByText("Clean", { exact: true }).click();
  await desk.getByLabel("Make shadows and paper white").check();
  await desk.getByLabel("More contrast").check();
  await desk.getByText("Working…").waitFor({ state: "hidden" });
  await page.waitForTimeout(1500);
}
