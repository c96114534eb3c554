import { expect, type Page, test } from "@playwright/test";
import { pinPosition } from "../../src/circuit/index.ts";
import { type Job, ownerOf, splitRef } from "../../src/job/index.ts";
import { fitBox, toView } from "../../src/session/index.ts";
import { boxAtRest } from "./support/at-rest.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";
import { untracedDemo } from "./support/untraced-demo.ts";

type Place = readonly [x: number, y: number];

const SHEET = { left: 0, top: 0, right: 3508, bottom: 2480 };
/** A hole in the line from A1:5 down to S4:1, too long to be passed and too short to be an end. */
const HOLE = { at: [2523, 730], half: 12 } as const;

/** Pins but those of splices and page ends, as wires join them: lots of more than one, in order. */
function lotsOf({ diagram }: Job): readonly string[] {
  const kinds = new Map(diagram.parts.map(({ id, kind }) => [id, kind]));
  const beside = new Map<string, string[]>();
  for (const { from, to } of diagram.wires) {
    beside.set(from, [...(beside.get(from) ?? []), to]);
    beside.set(to, [...(beside.get(to) ?? []), from]);
  }
  const isPlain = (ref: string) => !["splice", "offpage"].includes(kinds.get(ownerOf(ref)) ?? "");
  const lots = [...beside.keys()].filter(isPlain).map((pin) => {
    const seen = new Set([pin]);
    for (const one of seen) for (const next of beside.get(one) ?? []) seen.add(next);
    return [...seen].filter(isPlain).sort();
  });
  return [...new Set(lots.filter((lot) => lot.length > 1).map((lot) => lot.join(" ")))].sort();
}

function pinAt({ diagram }: Job, ref: string): Place {
  const { owner, name } = splitRef(ref);
  const part = diagram.parts.find(({ id }) => id === owner);
  const at = part && pinPosition(part, name);
  if (!at) throw new Error(`no pin ${ref}`);
  return at;
}

/** Where places of the whole sheet are on the board. */
async function wholeSheet(page: Page, desk: DiagramDesk): Promise<(at: Place) => Place> {
  await page.getByRole("button", { name: /^Show the whole sheet/ }).click();
  const box = await boxAtRest(desk.canvas);
  const size = { width: Math.round(box.width), height: Math.round(box.height) };
  const camera = fitBox(SHEET, size, 8, 3);
  return (at) => toView(camera, at);
}

test("lines of a scan are followed, a doubtful place is answered, and all of it becomes wires", async ({
  page,
}, testInfo) => {
  test.setTimeout(240_000);
  const { traced, bytes } = await untracedDemo(HOLE);
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Open a file…" }).click(),
  ]);
  await chooser.setFiles({ name: "untraced.pintruth", mimeType: "application/zip", buffer: bytes });
  const desk = new DiagramDesk(page);
  await expect(
    page.getByRole("heading", { name: "Untraced" }).or(page.getByText("Untraced")),
  ).not.toHaveCount(0);
  await page.getByRole("button", { name: "Low table" }).click();

  await page.getByRole("button", { name: "Scan desk", exact: true }).click();
  const bar = page.getByRole("toolbar", { name: "Scan desk" });
  await bar.getByRole("button", { name: "Follow a line" }).click();
  await expect(page.getByText("Tap a pin or a line of the picture")).toBeVisible({
    timeout: 120_000,
  });
  const at = await wholeSheet(page, desk);
  const click = async (place: Place) => {
    const [x, y] = at(place);
    await desk.canvas.click({ position: { x, y } });
  };

  // A line with a joint: its net names all three pins.
  await click([pinAt(traced, "F1:1")[0] - 60, pinAt(traced, "F1:1")[1]]);
  const followed = page.getByRole("region", { name: "The followed line" });
  await expect(followed).toContainText("Joins F1:1, K1:30 and Q1:2");

  // A pin whose line has a hole: what is asked is not joined.
  await click(pinAt(traced, "A1:5"));
  await expect(followed).toContainText("Comes to A1:5 only");
  await followed.getByRole("button", { name: "1 doubtful place" }).click();
  const doubt = page.getByRole("region", { name: "Doubtful place" });
  await expect(doubt).toContainText("Does the line go on over the gap here?");
  await expect(doubt.getByRole("img")).toBeVisible();
  for (const name of ["Joined", "Not joined"]) {
    await expect(doubt.getByRole("button", { name, exact: true })).not.toBeFocused();
  }
  await doubt.getByRole("button", { name: "Joined", exact: true }).click();
  await expect(followed).toContainText("Joins A1:5 and S4:1");
  await expect(page.getByRole("progressbar")).toHaveCount(0);
  await testInfo.attach("followed", { body: await page.screenshot(), contentType: "image/png" });

  // Once the lines were followed with that answer, one key makes it a wire.
  await expect(async () => {
    await page.keyboard.press("Enter");
    await expect(followed).toHaveCount(0, { timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  const one = await desk.savedJob();
  expect(lotsOf(one)).toEqual(["A1:5 S4:1"]);
  expect(one.diagram.wires).toHaveLength(1);
  const [answer, ...others] = one.diagram.sheets[0]?.answers ?? [];
  expect(others).toEqual([]);
  expect(answer?.joined).toBe(true);
  expect(Math.hypot(...[0, 1].map((n) => (answer?.at[n] ?? 0) - (HOLE.at[n] ?? 0)))).toBeLessThan(
    12,
  );

  // All sure ones at once, and back with one undo.
  await page.keyboard.press("Escape");
  await bar.getByRole("button", { name: "Trace all" }).click();
  const nets = page.getByRole("region", { name: "Lines of the picture" });
  await expect(nets).toContainText("1 line drawn as on the picture", { timeout: 120_000 });
  // What was said is listed there, and taken back by one step.
  const said = nets.getByRole("region", { name: "What you said" });
  await expect(said.getByRole("listitem")).toHaveText([/Joined here/]);
  await said.getByRole("button", { name: "Take back" }).click();
  await expect(said).toHaveCount(0);
  expect((await desk.savedJob()).diagram.sheets[0]?.answers).toBeUndefined();
  await page.keyboard.press("Control+z");
  await expect(said.getByRole("listitem")).toHaveCount(1);
  // A stain is no line: all of what was dashed goes, and comes back.
  const stained = nets.getByRole("listitem").filter({ hasText: "where nothing is placed" });
  await expect(stained).toContainText("F4:2 and K2:30; one end");
  await stained.getByRole("button", { name: "Look" }).click();
  await page.getByRole("button", { name: "Not a line: leave it out" }).click();
  await expect(said.getByRole("listitem")).toHaveText([/Joined here/, /Not a line: left out/]);
  await expect(nets.getByText(/^Joins F4:2 and K2:30/)).not.toContainText("one end", {
    timeout: 60_000,
  });
  await said
    .getByRole("listitem")
    .filter({ hasText: "left out" })
    .getByRole("button", { name: "Take back" })
    .click();
  await expect(stained).toContainText("one end", { timeout: 60_000 });
  expect((await desk.savedJob()).diagram.sheets[0]?.answers).toEqual([answer]);

  await nets.getByRole("button", { name: /^Accept all sure ones/ }).click();
  await expect(nets.getByRole("button", { name: "Accept all sure ones (0)" })).toBeDisabled();
  // The button that had the keys has nothing more to do: they are on the first line to look at.
  await expect(nets.locator(":focus")).toContainText("Joins F4:2 and K2:30");
  const sure = await desk.savedJob();
  const truth = lotsOf(traced);
  expect(truth).toEqual(expect.arrayContaining([...lotsOf(sure)]));
  expect(lotsOf(sure).length).toBeGreaterThan(truth.length - 3);
  expect(sure.diagram.parts.some(({ kind }) => kind === "offpage")).toBe(false);
  await page.keyboard.press("Control+z");
  expect((await desk.savedJob()).diagram.wires).toEqual(one.diagram.wires);
  await page.keyboard.press("Control+Shift+z");

  // What was not sure is accepted one by one.
  const accept = nets.getByRole("button", { name: "Accept", exact: true });
  for (let left = await accept.count(); left > 0; left--) {
    await expect(accept).toHaveCount(left);
    await accept.first().click();
  }
  await expect(nets).toContainText("Nothing is missing");
  const all = await desk.savedJob();
  expect(lotsOf(all)).toEqual(truth);
  // Wires run where the picture has their lines: the corners of the one to K1's coil lie on it.
  const toCoil = ({ diagram }: Job) =>
    diagram.wires.find(({ from, to }) => [from, to].sort().join(" ") === "K1:86 S1:50")?.path ?? [];
  expect(toCoil(all)).toHaveLength(toCoil(traced).length);
  for (const [x, y] of toCoil(all)) {
    const away = toCoil(traced).map((corner) => Math.hypot(corner[0] - x, corner[1] - y));
    expect(Math.min(...away)).toBeLessThan(8);
  }
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("the list makes way for the place that is asked about, which stays in sight", async ({
    page,
  }) => {
    test.setTimeout(120_000);
    const { bytes } = await untracedDemo(HOLE);
    await page.route("**/sample-data/sweeper.pintruth", (route) =>
      route.fulfill({ body: bytes, contentType: "application/zip" }),
    );
    await withoutFilePickers(page);
    await page.goto("./");
    await page
      .getByRole("navigation", { name: "Screens" })
      .getByRole("button", { name: /Diagram/ })
      .tap();
    await page.getByRole("button", { name: "Scan desk", exact: true }).tap();
    await page.getByRole("button", { name: "Trace all" }).tap();
    const nets = page.getByRole("region", { name: "Lines of the picture" });
    const asked = nets.getByRole("listitem").filter({ hasText: "A1:5" });
    await expect(asked).toContainText("One doubtful place", { timeout: 90_000 });
    await asked.getByRole("button", { name: "Look" }).tap();

    const card = page.getByRole("region", { name: "Doubtful place" });
    await expect(card).toContainText("Does the line go on over the gap here?");
    await expect(nets).toBeHidden();
    const board = page.getByRole("application", { name: "Diagram board" });
    // Most of the board is not under the card.
    await expect(async () => {
      const [free, taken] = [await board.boundingBox(), await card.boundingBox()];
      expect((taken?.y ?? 0) - (free?.y ?? 0)).toBeGreaterThan(0.5 * (free?.height ?? 0));
    }).toPass();
    for (const button of await card.getByRole("button").all()) {
      const box = await button.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
    await card.getByRole("button", { name: "Joined", exact: true }).tap();
    await expect(nets).toBeVisible();
    await expect(nets.getByText("Joins A1:5 and S4:1.")).toBeVisible({ timeout: 60_000 });
  });
});
