import { join } from "node:path";
import { createCanvas } from "@napi-rs/canvas";
import { type Browser, chromium, type Page } from "@playwright/test";
import { BROWSER_ARGS, browserOnPath } from "../../scripts/support/browser.mjs";
import { freePort } from "../../scripts/support/free-port.mjs";
import { serveFolder } from "../../scripts/support/static-files.mjs";
import { seededRandom } from "../../src/base/index.ts";
import { type Job, newJob, type Picture, writePintruth } from "../../src/job/index.ts";
import { bigJob, SCAN } from "../support/big-job.ts";
import { type Bench, median, ninetieth, type Row } from "./harness.ts";

const WIRES = 5000;
const FILE = "images/scan.jpg";
const EMPTY = "panning an empty board";
const OPERATED = `panning ${WIRES} wires while the machine is operated`;

/** An A3 page at 300 dots an inch with lines, words and the grain of paper. */
async function scan(): Promise<Picture> {
  const { width, height } = SCAN;
  const random = seededRandom(17);
  const canvas = createCanvas(width, height);
  const context = canvas.getContext("2d");
  context.fillStyle = "#efe8d8";
  context.fillRect(0, 0, width, height);
  const grain = context.getImageData(0, 0, width, height);
  for (let at = 0; at < grain.data.length; at += 4) {
    const noise = random.below(24);
    for (let channel = 0; channel < 3; channel++) {
      grain.data[at + channel] = (grain.data[at + channel] ?? 0) - noise;
    }
  }
  context.putImageData(grain, 0, 0);
  context.strokeStyle = "#222";
  context.fillStyle = "#222";
  context.lineWidth = 4;
  context.font = "40px sans-serif";
  for (let n = 0; n < 600; n++) {
    const [x, y] = [random.below(width), random.below(height)];
    context.strokeRect(x, y, 20 + random.below(400), random.below(3) * 100);
    context.fillText(`W${n}`, x, y);
  }
  return { bytes: new Uint8Array(await canvas.encode("jpeg", 85)), type: "image/jpeg" };
}

/** The job as an archive, over the scan where there is one. */
function archive(job: Job, picture: Picture | null): Uint8Array {
  const [sheet] = job.diagram.sheets;
  if (sheet && picture) sheet.image = { file: FILE, ...SCAN };
  return writePintruth(job, picture ? new Map([[FILE, picture]]) : new Map());
}

/** Opens the app on a first visit, with this archive where its demo would be. */
async function open(browser: Browser, url: string, demo: Uint8Array): Promise<[Page, number]> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  page.setDefaultTimeout(300_000);
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body: Buffer.from(demo), contentType: "application/zip" }),
  );
  const began = performance.now();
  await page.goto(url);
  await page.getByRole("region", { name: "Diagram" }).locator("canvas").first().waitFor();
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
  return [page, performance.now() - began];
}

/** Operates the machine on the board: its key on, so that wires far and near carry current. */
async function operate(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Operate" }).click();
  const panel = page.getByRole("region", { name: "Operate", exact: true });
  const key = panel.getByRole("group", { name: "S1", exact: true });
  await key.getByRole("radio", { name: "on", exact: true }).click({ force: true });
  await panel
    .getByRole("status")
    .filter({ hasText: /^S1 to on:/ })
    .waitFor();
}

/** Milliseconds between frames while the middle button drags the diagram to and fro. */
async function panning(page: Page): Promise<number[]> {
  const box = await page.getByRole("region", { name: "Diagram" }).boundingBox();
  if (!box) throw new Error("the diagram board is not on the screen");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down({ button: "middle" });
  await page.evaluate(() => {
    const frames: number[] = [];
    let last = performance.now();
    const tick = (now: number) => {
      frames.push(now - last);
      last = now;
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
    Object.assign(globalThis, { frames });
  });
  for (let n = 1; n <= 120; n++) {
    await page.mouse.move(x + 150 * Math.sin(n / 10), y + 100 * Math.sin(n / 7));
  }
  await page.mouse.up({ button: "middle" });
  const frames: number[] = await page.evaluate("globalThis.frames");
  return frames.slice(1);
}

const bench: Bench = {
  title: "A 17-megapixel scan and 5,000 wires, in the browser",
  about:
    "Time between frames while the middle button drags the diagram board, 1440 by 900, in headless " +
    "Chromium that draws in software. The scan has 4961 by 3508 pixels. The reference is the same " +
    "drag over a sheet with nothing on it; a display that keeps up shows a frame every 16.7 ms.",
  async run() {
    const picture = await scan();
    const empty = newJob("Empty", 24);
    empty.diagram.sheets.push({ id: "sheet1" });
    const pictured = structuredClone(empty);
    const boards: [string, Uint8Array][] = [
      [EMPTY, archive(empty, null)],
      ["panning the scan alone", archive(pictured, picture)],
      [`panning ${WIRES} wires alone`, archive(bigJob(WIRES), null)],
      [`panning ${WIRES} wires over the scan`, archive(bigJob(WIRES), picture)],
      [OPERATED, archive(bigJob(WIRES), null)],
    ];
    const server = await serveFolder(join(process.cwd(), "dist"), { port: await freePort() });
    const executablePath = browserOnPath();
    const browser = await chromium.launch({
      args: BROWSER_ARGS,
      ...(executablePath ? { executablePath } : {}),
    });
    const rows: Row[] = [];
    let reference = Number.NaN;
    for (const [what, demo] of boards) {
      const [page, opened] = await open(browser, server.url, demo);
      // The picture is decoded, and its tiles are made, after the board is there.
      await page.waitForTimeout(3000);
      if (what === OPERATED) await operate(page);
      const frames = await panning(page);
      await page.context().close();
      if (what === EMPTY) reference = median(frames);
      const note =
        `9 of 10 frames within ${ninetieth(frames).toFixed(0)} ms, ` +
        `on the screen after ${(opened / 1000).toFixed(1)} s`;
      const held = what === EMPTY ? {} : { against: EMPTY, ratio: median(frames) / reference };
      rows.push({ what, median: median(frames), ...held, note });
    }
    await browser.close();
    await server.close();
    return rows;
  },
};

export default bench;
