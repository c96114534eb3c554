/** Words printed on a scan are read in the browser, looked over, and written to what is drawn. */
import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { type Job, type Picture, writePintruth } from "../../src/job/index.ts";
import { wordlessSweeper } from "../support/wordless-sweeper.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

const SCAN = "sample-data/sweeper/images/sweeper-sheet-7.jpg";
/** A strip of the demo's sheet: five wires, their prints, a key switch, fuses and splices. */
const STRIP = { left: 560, top: 100, width: 1400, height: 900 };

/** The strip alone, cut out by the browser. */
async function cutStrip(page: Page): Promise<Uint8Array> {
  const scan = readFileSync(SCAN).toString("base64");
  const url = await page.evaluate(
    async ({ scan, left, top, width, height }) => {
      const whole = await fetch(`data:image/jpeg;base64,${scan}`).then((answer) => answer.blob());
      const piece = await createImageBitmap(whole, left, top, width, height);
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width, height });
      canvas.getContext("2d")?.drawImage(piece, 0, 0);
      return canvas.toDataURL("image/png");
    },
    { scan, ...STRIP },
  );
  return new Uint8Array(Buffer.from(url.split(",")[1] ?? "", "base64"));
}

/** What of the demo lies wholly on the strip, drawn and wordless. */
function stripJob(): Job {
  const { job } = wordlessSweeper();
  const { left, top, width, height } = STRIP;
  const moved = ([x, y]: readonly number[]): [number, number] => [(x ?? 0) - left, (y ?? 0) - top];
  const isOn = ([x, y]: readonly number[]) =>
    (x ?? 0) > left + 60 &&
    (x ?? 0) < left + width - 60 &&
    (y ?? 0) > top &&
    (y ?? 0) < top + height;
  const parts = job.diagram.parts.filter(({ at, kind }) => kind !== "module" && isOn(at));
  const ids = new Set(parts.map(({ id }) => id));
  const owner = (ref: string) => ref.split(":")[0] ?? "";
  const wires = job.diagram.wires.filter(
    ({ from, to }) => ids.has(owner(from)) && ids.has(owner(to)),
  );
  for (const part of parts) part.at = moved(part.at);
  for (const wire of wires) if (wire.path) wire.path = wire.path.map(moved);
  return {
    ...job,
    plugs: [],
    diagram: {
      sheets: [{ id: "sheet7", image: { file: "images/strip.png", width, height } }],
      parts,
      wires,
    },
  };
}

async function openStrip(page: Page): Promise<void> {
  await withoutFilePickers(page);
  await page.goto("about:blank");
  const strip: Picture = { bytes: await cutStrip(page), type: "image/png" };
  const body = Buffer.from(writePintruth(stripJob(), new Map([["images/strip.png", strip]])));
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  await page.goto("./");
  const screens = page.getByRole("navigation", { name: "Screens" });
  const desk = page.getByRole("button", { name: "Scan desk", exact: true });
  await expect(screens.or(desk).first()).toBeVisible();
  if (await screens.isVisible()) await screens.getByRole("button", { name: /Diagram/ }).click();
  await desk.click();
}

test("words are read without leaving the app's own folder, confirmed by mouse, and are in the file", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const elsewhere: string[] = [];
  let ocr = 0;
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (url.pathname.includes("/ocr/")) ocr++;
    if (!/^(data|blob|about):/.test(url.protocol) && url.hostname !== "127.0.0.1")
      elsewhere.push(url.href);
  });
  await openStrip(page);
  // Nothing of the reader is fetched before it is asked for.
  expect(ocr).toBe(0);
  await page.getByRole("button", { name: "Read words" }).click();
  const words = page.getByRole("region", { name: "Printed words" });
  const confirmAll = words.getByRole("button", { name: /^Confirm all \d+ sure$/ });
  await expect(confirmAll).toBeEnabled({ timeout: 150_000 });
  expect(ocr).toBeGreaterThan(0);
  expect(elsewhere).toEqual([]);

  // One by mouse alone, from the list.
  await words.getByRole("button", { name: "List of all words" }).click();
  const all = page.getByRole("region", { name: "All words" });
  await all.getByRole("button", { name: /^F2 / }).click();
  await expect(words.getByRole("textbox", { name: "Reads" })).toHaveValue("F2");
  const goal = words.getByText("F3 (fuse): name F2").filter({ visible: true });
  await expect(goal).toHaveCount(1);
  await words.getByRole("button", { name: "Confirm", exact: true }).click();
  await expect(goal).toHaveCount(0);

  // One corrected by hand and taken with Enter.
  await all.getByRole("button", { name: /^30-4 ?RD / }).click();
  const reads = words.getByRole("textbox", { name: "Reads" });
  await reads.fill("30-44 RD/BK");
  const toWrite = async () =>
    Number(/\d+/.exec((await words.getByRole("status").textContent()) ?? "")?.[0]);
  const many = await toWrite();
  // The key held down takes no second one unseen.
  await page.keyboard.down("Enter");
  await page.keyboard.down("Enter");
  await page.keyboard.up("Enter");
  await expect.poll(toWrite).toBe(many - 1);
  await words.getByRole("button", { name: "List of all words" }).click();

  // The sure ones at once, one undo step.
  await confirmAll.click();
  await expect(confirmAll).toHaveCount(0);
  // The next thing to do has the keys: the first doubtful word.
  await expect(words.getByRole("textbox", { name: "Reads" })).toBeFocused();
  const job = await new DiagramDesk(page).savedJob();
  const ids = job.diagram.parts.map(({ id }) => id);
  expect(ids).toEqual(expect.arrayContaining(["F2", "F3", "F5", "S1", "SP1", "SP7", "SP8"]));
  const numbers = new Map(job.diagram.wires.map(({ number, colour }) => [number, colour]));
  expect(numbers.get("30-44")).toEqual({ base: "RD", tracer: "BK" });
  expect(numbers.get("15-1")).toEqual({ base: "BK", tracer: "RD" });
  const fuse = job.diagram.parts.find(({ id }) => id === "F3");
  expect(fuse).toMatchObject({ kind: "fuse", amps: 7.5 });

  await page.getByRole("button", { name: /^Undo/ }).click();
  const before = await new DiagramDesk(page).savedJob();
  const left = before.diagram.wires.flatMap(({ number }) => (number ? [number] : []));
  expect(left).toEqual(["30-44"]);
});

test("reading is stopped at once, and the picture stays in hand", async ({ page }) => {
  await openStrip(page);
  await page.getByRole("button", { name: "Read words" }).click();
  const words = page.getByRole("region", { name: "Printed words" });
  await words.getByRole("button", { name: "Stop" }).click();
  await expect(words.getByRole("status")).toHaveText("No words were read.");
  await expect(words.getByRole("progressbar")).toHaveCount(0);
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("the list takes the place of the word in hand, and gives it back when one is tapped", async ({
    page,
  }) => {
    test.setTimeout(180_000);
    await openStrip(page);
    await page.getByRole("button", { name: "Read words" }).tap();
    const words = page.getByRole("region", { name: "Printed words" });
    const list = words.getByRole("button", { name: "List of all words" });
    await expect(list).toBeEnabled({ timeout: 150_000 });
    const reads = words.getByRole("textbox", { name: "Reads" });
    const confirm = words.getByRole("button", { name: "Confirm", exact: true });
    for (const one of [reads, confirm]) await expect(one).toBeInViewport({ ratio: 1 });

    await list.tap();
    await expect(reads).toBeHidden();
    const row = words.getByRole("button", { name: /^F2 / });
    await row.scrollIntoViewIfNeeded();
    await expect(row).toBeInViewport({ ratio: 1 });
    // What can be done with all of them is not scrolled away.
    await expect(list).toBeInViewport({ ratio: 1 });
    expect((await row.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44);
    await row.tap();
    await expect(row).toBeHidden();
    await expect(reads).toHaveValue("F2");
    for (const one of [reads, confirm]) await expect(one).toBeInViewport({ ratio: 1 });
    const board = await page.getByRole("application", { name: "Diagram board" }).boundingBox();
    expect(board?.height ?? 0).toBeGreaterThan(300);
  });
});
