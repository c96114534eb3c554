/** What the scan desk says lies on no control, one thing at a time, and takes no more room than it needs. */
import { createCanvas, ImageData } from "@napi-rs/canvas";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { newJob, type Picture, writePintruth } from "../../src/job/index.ts";
import { harmedPage } from "../support/drawn-pages/traced.ts";
import { boxAtRest, type RestingBox } from "./support/at-rest.ts";
import { withoutFilePickers } from "./support/diagram-desk.ts";
import { untracedDemo } from "./support/untraced-demo.ts";

const board = (page: Page) => page.getByRole("application", { name: "Diagram board" });
const bars = (page: Page) => [
  page.getByRole("toolbar", { name: "Diagram tools" }),
  page.getByRole("toolbar", { name: "Scan desk" }),
];
const nets = (page: Page) => page.getByRole("region", { name: "Lines of the picture" });

const areApart = (a: RestingBox, b: RestingBox) =>
  a.y + a.height <= b.y || b.y + b.height <= a.y || a.x + a.width <= b.x || b.x + b.width <= a.x;

/** Opens a job in place of the demo. */
async function openInstead(page: Page, body: Buffer): Promise<void> {
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  await withoutFilePickers(page);
  await page.goto("./");
}

async function openDesk(page: Page): Promise<void> {
  const screens = page.getByRole("navigation", { name: "Screens" });
  const desk = page.getByRole("button", { name: "Scan desk", exact: true });
  await expect(screens.or(desk).first()).toBeVisible();
  if (await screens.isVisible()) await screens.getByRole("button", { name: /Diagram/ }).tap();
  await desk.click();
}

async function hasRoomForFingers(inside: Locator): Promise<void> {
  for (const button of await inside.getByRole("button").all()) {
    const { width, height } = await boxAtRest(button);
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
  }
}

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 1024, height: 768 } });

  test("with nothing missing the list of lines is one line, and the picture has the room", async ({
    page,
  }) => {
    test.setTimeout(120_000);
    await withoutFilePickers(page);
    await page.goto("./");
    await openDesk(page);
    const before = await boxAtRest(board(page));
    await page.getByRole("button", { name: "Trace all" }).click();
    await expect(nets(page)).toContainText("Nothing is missing", { timeout: 90_000 });
    const [panel, picture] = [await boxAtRest(nets(page)), await boxAtRest(board(page))];
    expect(picture.width).toBe(before.width);
    expect(picture.height + panel.height).toBeCloseTo(before.height, 0);
    expect(panel.height).toBeLessThanOrEqual(60);
  });
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("what was done is told under the bars, and no button moves while lines are followed anew", async ({
    page,
  }) => {
    test.setTimeout(120_000);
    await openInstead(page, (await untracedDemo({ at: [2523, 730], half: 12 })).bytes);
    await openDesk(page);
    await page.getByRole("button", { name: "Trace all" }).tap();
    const accept = nets(page).getByRole("button", { name: /^Accept all sure ones/ });
    await expect(accept).toBeEnabled({ timeout: 90_000 });
    await boxAtRest(accept);
    await nets(page)
      .getByRole("listitem")
      .filter({ hasText: "A1:5" })
      .getByRole("button", { name: "Look" })
      .tap();
    const card = page.getByRole("region", { name: "Doubtful place" });
    await hasRoomForFingers(card);
    const places = accept.evaluate(
      (button) =>
        new Promise<number[]>((done) => {
          const tops = new Set<number>();
          let wasOff = false;
          const look = () => {
            const isSeen = getComputedStyle(button).visibility === "visible";
            const isOff = button.matches(":disabled");
            if (isSeen) tops.add(Math.round(button.getBoundingClientRect().top));
            if (isSeen && isOff) wasOff = true;
            if (wasOff && !isOff) done([...tops]);
            else requestAnimationFrame(look);
          };
          look();
        }),
    );
    await card.getByRole("button", { name: "Joined", exact: true }).tap();
    await expect(nets(page).getByText("Joins A1:5 and S4:1.")).toBeVisible({ timeout: 60_000 });
    expect(await places).toHaveLength(1);

    await accept.tap();
    const told = page.getByRole("status").filter({ hasText: /^Drew \d+ wires/ });
    await expect(told).toBeVisible();
    const message = await boxAtRest(told);
    for (const bar of bars(page)) expect(areApart(message, await boxAtRest(bar))).toBe(true);
    await hasRoomForFingers(told);
  });

  test("that a picture is rough is told first, and put away makes way for what to do", async ({
    page,
  }) => {
    test.setTimeout(120_000);
    const { out } = await harmedPage(7002, 1, [150], [36, 26]);
    const { width, height, data } = out.picture;
    const canvas = createCanvas(width, height);
    const pixels = data as Uint8ClampedArray<ArrayBuffer>;
    canvas.getContext("2d").putImageData(new ImageData(pixels, width, height), 0, 0);
    const rough: Picture = { bytes: new Uint8Array(await canvas.encode("png")), type: "image/png" };
    const file = "images/rough.png";
    const blank = newJob("Rough", 24);
    const job = {
      ...blank,
      diagram: { ...blank.diagram, sheets: [{ id: "sheet", image: { file, width, height } }] },
    };
    await openInstead(page, Buffer.from(writePintruth(job, new Map([[file, rough]]))));
    await openDesk(page);
    await page.getByRole("button", { name: "Follow a line" }).tap();
    const note = page.getByRole("status").filter({ hasText: "too rough to tell its lines" });
    await expect(note).toBeVisible({ timeout: 90_000 });
    const hint = page.getByText("Tap a pin or a line of the picture");
    await expect(hint).toBeHidden();
    const place = await boxAtRest(note);
    for (const bar of bars(page)) expect(areApart(place, await boxAtRest(bar))).toBe(true);
    await hasRoomForFingers(note);
    await note.getByRole("button", { name: "Put away" }).tap();
    await expect(note).toHaveCount(0);
    await expect(page.getByRole("application", { name: "Diagram board" })).toBeFocused();
    await expect(hint).toBeVisible();
  });
});
