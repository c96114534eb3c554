import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { readJobText, writePintruth } from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";
import { middleAtRest } from "./support/at-rest.ts";
import { withoutFilePickers } from "./support/diagram-desk.ts";

const onDrawing = (page: Page) => page.getByRole("region", { name: "On the drawing" });
/** A part on the drawing, as it is read out: its name, and how it is now. */
const part = (page: Page, id: string) =>
  onDrawing(page).getByRole("button", { name: new RegExp(`^${id}\\b`) });
const panel = (page: Page) => page.getByRole("region", { name: "Operate", exact: true });
const readout = (page: Page) => page.getByRole("region", { name: "Reading on the drawing" });

async function openDemo(page: Page): Promise<void> {
  await withoutFilePickers(page);
  await page.goto("./");
  await expect(page.getByText(/^[1-9]\d* contradictions?/).first()).toBeVisible();
}

/** The switch stands beside the board with all its positions. */
const position = (page: Page, name: string, to: string) =>
  panel(page)
    .getByRole("group", { name, exact: true })
    .getByRole("radio", { name: to, exact: true });

/** Presses a position's label, which is what is seen of it, once it stands still. */
async function choose(radio: Locator): Promise<void> {
  await radio.locator("..").click();
  await expect(radio).toBeChecked();
}

/** The open job, saved to a file and read back as anybody's script would. */
async function savedRecordings(page: Page) {
  await page.getByRole("button", { name: "Jobs" }).click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as .json…" }).click(),
  ]);
  const read = readJobText(await readFile(await download.path(), "utf8"));
  await page.keyboard.press("Escape");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value.machines[0]?.recordings;
}

test("with the mouse: press, see, pull a fuse, keep the steps, reload and replay them", async ({
  page,
}) => {
  await openDemo(page);
  await page.getByRole("button", { name: "Operate" }).click();
  await expect(part(page, "P1")).toHaveAccessibleName(/dark$/);
  // Time is this test's own.
  await page.getByRole("button", { name: "Let time run" }).click();

  // A key has three positions: a touch chooses it, and its positions are offered on the board.
  await page.mouse.click(...(await middleAtRest(part(page, "S1"))));
  await choose(readout(page).getByRole("radio", { name: "run", exact: true }));
  await expect(part(page, "A1")).toHaveAccessibleName(/: powered$/);
  await expect(part(page, "E1")).toHaveAccessibleName(/lit$/);

  // A button is pressed as long as the mouse is.
  await page.mouse.move(...(await middleAtRest(part(page, "S2"))));
  await page.mouse.down();
  await expect(part(page, "S2")).toHaveAccessibleName(/pressed$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
  await page.mouse.up();
  await expect(part(page, "S2")).toHaveAccessibleName(/released$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
  await expect(part(page, "K2")).toHaveAccessibleName(/pulled in$/);
  await expect(part(page, "M1")).toHaveAccessibleName(/running$/);

  // The plug's face shows what its cavities carry.
  await expect(page.getByRole("button", { name: /^Cavity 3,/ })).toHaveAccessibleName(
    /live, 2[45]\.\d V against chassis/,
  );
  await expect(page.getByRole("button", { name: /^Cavity 4,/ })).toHaveAccessibleName(
    /ground, 0\.0\d V/,
  );
  await expect(page.getByRole("button", { name: /^Cavity 2,/ })).toHaveAccessibleName(/floating/);

  // With its fuse pulled the module forgets, and everything it drives goes off.
  await page.mouse.click(...(await middleAtRest(part(page, "F3"))));
  await readout(page).getByRole("button", { name: "Pull F3" }).click();
  await expect(part(page, "F3")).toHaveAccessibleName(/taken out$/);
  await expect(part(page, "A1")).toHaveAccessibleName(/not powered$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/dark$/);

  await panel(page).getByRole("tab", { name: "Steps" }).click();
  await expect(panel(page).getByRole("listitem").filter({ hasText: "F3" }).first()).toContainText(
    "goes dead",
  );
  await panel(page).getByRole("textbox", { name: "Name of these steps" }).fill("Pump, then F3 out");
  await panel(page).getByRole("button", { name: "Keep these steps" }).click();
  const steps = [
    { do: "turn", switch: "S1", position: "run" },
    { do: "turn", switch: "S2", position: "pressed" },
    { do: "release", switch: "S2" },
    { do: "remove", id: "F3" },
  ];
  // The demo comes with one of its own.
  const saved = await savedRecordings(page);
  expect(saved?.slice(1)).toEqual([{ id: "recording2", name: "Pump, then F3 out", steps }]);
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();

  await page.reload();
  await page.getByRole("button", { name: "Operate" }).click();
  await expect(part(page, "P1")).toHaveAccessibleName(/dark$/);
  await panel(page).getByRole("tab", { name: "Steps" }).click();
  await panel(page).getByRole("button", { name: "Replay Pump, then F3 out" }).click();
  const replay = panel(page).getByRole("region", { name: "Replay of Pump, then F3 out" });
  const next = replay.getByRole("button", { name: "Next step" });
  await next.click();
  await expect(part(page, "A1")).toHaveAccessibleName(/: powered$/);
  await next.click();
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
  await expect(replay.getByRole("listitem").filter({ hasText: "S2 to pressed" })).toContainText(
    "K2 pulls in",
  );
  await replay.getByRole("button", { name: "Run through" }).click();
  await expect(part(page, "F3")).toHaveAccessibleName(/taken out$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/dark$/);
  await expect(replay.getByText("4 of 4 steps done")).toBeVisible();
  await replay.getByRole("button", { name: "Show: S2 to pressed" }).click();
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
});

test("with the keyboard alone: in, from part to part, press and hold, and out again", async ({
  page,
}) => {
  await openDemo(page);
  await page.keyboard.press("o");
  const key = position(page, "S1 key switch", "off");
  await key.focus();
  await page.keyboard.press("ArrowRight");
  await expect(part(page, "A1")).toHaveAccessibleName(/: powered$/);

  await part(page, "S2").focus();
  await page.keyboard.down("Enter");
  await expect(part(page, "S2")).toHaveAccessibleName(/pressed$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
  await page.keyboard.up("Enter");
  await expect(part(page, "S2")).toHaveAccessibleName(/released$/);
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);

  // Arrow keys go to the neighbour on the drawing, and what has the focus is read.
  await page.keyboard.press("ArrowLeft");
  await expect(part(page, "S3")).toBeFocused();
  await expect(readout(page)).toContainText("S3");

  // Editing rests: nothing is deleted, nothing is nudged.
  await page.keyboard.press("Delete");
  await expect(part(page, "S3")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Undo/ })).toBeDisabled();

  await page.keyboard.press("Escape");
  await expect(readout(page)).toHaveCount(0);
  await page.keyboard.press("Escape");
  await expect(onDrawing(page)).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Operate" })).toBeVisible();

  // What was done is remembered.
  await page.keyboard.press("o");
  await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
});

test("a station that is pressed shows its panel, and what was done is there again afterwards", async ({
  page,
}) => {
  await openDemo(page);
  await page.keyboard.press("o");
  await choose(position(page, "S1 key switch", "run"));
  await expect(part(page, "E1")).toHaveAccessibleName(/lit$/);
  await page.getByRole("button", { name: /^5 Prove/ }).click();
  await expect(page.getByRole("region", { name: "Reading pad" })).toBeVisible();
  await expect(panel(page)).toHaveCount(0);
  await page.getByRole("button", { name: "Operate" }).click();
  await expect(part(page, "E1")).toHaveAccessibleName(/lit$/);
});

test("a drag that sets out on a button moves the drawing and presses nothing", async ({ page }) => {
  await openDemo(page);
  await page.keyboard.press("o");
  await choose(position(page, "S1 key switch", "run"));
  await expect(part(page, "A1")).toHaveAccessibleName(/: powered$/);
  const [x, y] = await middleAtRest(part(page, "S2"));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 40, y + 30);
  await page.mouse.up();
  const moved = async () => {
    const [nowX, nowY] = await middleAtRest(part(page, "S2"));
    return [Math.round(nowX - x), Math.round(nowY - y)];
  };
  await expect.poll(moved).toEqual([40, 30]);
  await expect(part(page, "P1")).toHaveAccessibleName(/dark$/);
  await expect(panel(page).getByRole("status").first()).toContainText("S1 to run");
});

test("two leads show the volts between any two places", async ({ page }) => {
  await openDemo(page);
  await page.keyboard.press("o");
  await choose(position(page, "S1 key switch", "run"));
  await panel(page).getByRole("tab", { name: "Measure" }).click();
  await panel(page)
    .getByRole("button", { name: /^red lead/ })
    .click();
  await page.getByRole("button", { name: /^Cavity 1,/ }).click();
  const volts = panel(page).getByRole("status", { name: "Volts between the leads" });
  await expect(volts).toHaveText(/^2[45]\.\d V$/);
  await panel(page)
    .getByRole("button", { name: /^black lead/ })
    .click();
  await page.getByRole("button", { name: /^Cavity 5,/ }).click();
  await expect(volts).toContainText("ghost voltage");
});

test.describe("by touch, on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("a tapped switch lights the lamp, and the plug shows what it carries", async ({ page }) => {
    await openDemo(page);
    const bar = page.getByRole("navigation", { name: "Screens" });
    await bar.getByRole("button", { name: "Diagram" }).tap();
    await page.getByRole("button", { name: "Operate" }).tap();
    await page.touchscreen.tap(...(await middleAtRest(part(page, "S1"))));
    await choose(readout(page).getByRole("radio", { name: "run", exact: true }));
    await expect(part(page, "A1")).toHaveAccessibleName(/: powered$/);
    await page.touchscreen.tap(...(await middleAtRest(part(page, "S2"))));
    await expect(part(page, "P1")).toHaveAccessibleName(/lit$/);
    await expect(part(page, "S2")).toHaveAccessibleName(/released$/);

    await bar.getByRole("button", { name: "Plug" }).tap();
    await expect(page.getByRole("button", { name: /^Cavity 3,/ })).toHaveAccessibleName(/live, 2/);
    await panel(page).getByRole("button", { name: "Stop operating" }).tap();
    await expect(page.getByRole("button", { name: /^Cavity 3,/ })).toHaveAccessibleName(
      /contradicted/,
    );
  });
});

test("what is drawn of current rests where less motion is asked for", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openDemo(page);
  await page.keyboard.press("o");
  await choose(position(page, "S1 key switch", "run"));
  await expect(part(page, "E1")).toHaveAccessibleName(/lit$/);
  const board = page.getByRole("application", { name: "Diagram board" });
  const picture = () => board.screenshot();
  await page.waitForTimeout(400);
  const before = await picture();
  await page.waitForTimeout(400);
  expect((await picture()).equals(before)).toBe(true);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await choose(position(page, "S1 key switch", "off"));
  await choose(position(page, "S1 key switch", "run"));
  await page.waitForTimeout(400);
  const moving = await picture();
  await page.waitForTimeout(400);
  expect((await picture()).equals(moving)).toBe(false);
});

test("a large machine is worked out beside the drawing, and goes on after an undo", async ({
  page,
}) => {
  const body = Buffer.from(writePintruth(bigJob(1600), new Map()));
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body, contentType: "application/zip" }),
  );
  let answer = () => {};
  const answers = new Promise<void>((done) => {
    answer = done;
  });
  await page.route(/play-worker/, (route) => answers.then(() => route.continue()));
  await page.goto("./");
  const title = page.getByRole("textbox", { name: "Title of the job" });
  await expect(title).toHaveValue("1600 wires");
  // Something to take back: a part of the circuit.
  const board = page.getByRole("application", { name: "Diagram board" });
  await board.focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: "Operate" }).click();
  await expect(panel(page).getByText("Working it out…")).toBeVisible();
  const on = position(page, "S1", "on");
  const place = await middleAtRest(on);
  answer();
  await expect(panel(page).getByText(/things are not known$/)).toBeVisible();
  // A finger that was on its way to it while the answer came has not missed it.
  expect(await middleAtRest(on)).toEqual(place);
  await choose(on);
  await expect(panel(page).getByRole("status").first()).toContainText("S1 to on:");
  expect(page.workers().some((one) => one.url().includes("play-worker"))).toBe(true);
  await expect(page.getByRole("button", { name: /^Cavity 1,/ })).toHaveAccessibleName(/live, 2/);
  await page.keyboard.press("Control+z");
  await expect(panel(page).getByRole("status").first()).toContainText("S1 to on:");
  await expect(on).toBeChecked();
});
