import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import type { Point } from "../../src/base/index.ts";
import { type Job, type Part, type PartKindName, readJobText } from "../../src/job/index.ts";
import { apply, homographyBetween, planOf, toResult } from "../../src/scan/index.ts";
import { fitBox, toView } from "../../src/session/diagram/camera.ts";
import { squaringOf } from "../../src/session/scan/index.ts";
import { formatColour } from "../../src/standards/index.ts";
import { boxAtRest } from "./support/at-rest.ts";
import { withoutFilePickers } from "./support/diagram-desk.ts";
import { Hand, type Spot } from "./support/hand.ts";
import { type PagePhoto, photoOfPage, SHADED } from "./support/page-photo.ts";
import { matchParts, netsOf, pinNames } from "./support/same-circuit.ts";

/** Long work on a busy machine. */
test.setTimeout(240_000);

/** As many clicks and drags as the whole way may take, less one. */
const GESTURES = 80;

/** Pixels of the scan that the demo was traced over. */
const SCAN = { width: 3508, height: 2480 };

/** The demo's circuit, traced by hand over the scan that was photographed. */
const traced = async (): Promise<Job> =>
  JSON.parse(
    await readFile(new URL("../../sample-data/sweeper/job.json", import.meta.url), "utf8"),
  );

let photo: PagePhoto;

test.beforeAll(async () => {
  photo = await photoOfPage(SHADED);
});

/** Where places of the scan lie on the job's squared picture. */
function placesIn(job: Job): (at: Point) => Point {
  const [sheet] = job.diagram.sheets;
  const { width, height } = SCAN;
  const onPhoto = homographyBetween(
    [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    photo.corners,
  );
  const plan = sheet?.original && planOf(squaringOf(sheet), sheet.original);
  if (!onPhoto || !plan) throw new Error("the sheet is not squared up");
  return (at) => toResult(plan, apply(onPhoto, at)) ?? [Number.NaN, Number.NaN];
}

/** Each wire's number and colour, as far as they are written. */
const numbersOf = ({ diagram }: Job): string[] =>
  diagram.wires.flatMap(({ number, colour }) =>
    number === undefined ? [] : [`${number} ${colour ? formatColour(colour) : ""}`],
  );

/** The words printed at the module's pins, in the order of its pins. */
const wordsOf = ({ diagram }: Job): string[] =>
  diagram.parts.flatMap((part) =>
    part.kind === "module"
      ? part.pins.flatMap(({ printed }, n) => (printed === undefined ? [] : [`${n} ${printed}`]))
      : [],
  );

/** The user's hand at the diagram, with what a user reads off the picture to help it. */
class Desk {
  readonly hand: Hand;

  constructor(private readonly page: Page) {
    this.hand = new Hand(page);
  }

  get board() {
    return this.page.getByRole("application", { name: "Diagram board" });
  }

  button(name: string | RegExp) {
    return this.page.getByRole("button", { name, exact: typeof name === "string" });
  }

  region(name: string) {
    return this.page.getByRole("region", { name });
  }

  /** Saves the job: at the end a gesture of the user's, on the way what they see on the board. */
  async save(): Promise<Job> {
    await this.hand.click(this.button("Jobs"));
    const path = await this.hand.save(this.button("Save as .json…"));
    const read = readJobText(await readFile(path, "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value;
  }

  /** The job as it is now. Looking at the board is no gesture. */
  async look(): Promise<Job> {
    const before = this.hand.gestures;
    const job = await this.save();
    this.hand.gestures = before;
    return job;
  }

  /** Gives the diagram all the room there is on a desk. */
  async makeRoom(): Promise<void> {
    await this.hand.click(this.button("Low table"));
    const divider = this.page.getByRole("separator").first();
    await this.hand.drag(divider, [4, 100], [600, 100]);
  }

  /** Shows the whole sheet; where its places are then on the board. */
  async wholeSheet(job: Job): Promise<(at: Point) => Spot> {
    // The board takes on its new size when what stood over it is gone.
    await boxAtRest(this.board);
    await this.hand.click(this.button("Show the whole sheet"));
    const image = job.diagram.sheets[0]?.image;
    const size = await boxAtRest(this.board);
    if (!image) throw new Error("no picture on the board");
    const sheet = { left: 0, top: 0, right: image.width, bottom: image.height };
    const camera = fitBox(sheet, size, 8, 3);
    return (at) => toView(camera, at);
  }

  /** Places a part where a user sees one that was not found for sure; `at`: pixels of the picture. */
  async placeBy(job: Job, at: Point, { kind, turn }: Part): Promise<void> {
    const found = this.region("Parts found");
    await this.hand.click(this.board, (await this.wholeSheet(job))(at));
    const as = found.getByLabel("Place as");
    if ((await as.isVisible()) && (await as.inputValue()) === kind) {
      await this.hand.click(found.getByRole("button", { name: "Place", exact: true }));
    } else await this.layFromPalette((await this.wholeSheet(job))(at), kind, turn);
  }

  /**
   * Of the nets that the program is not sure of, takes those that a user sees to be as printed: no two
   * of their pins are of two nets of the diagram.
   */
  async acceptTrueNets(expected: Job, places: (at: Point) => Point, reach: number): Promise<void> {
    const job = await this.look();
    const { pairs } = matchParts(expected.diagram.parts, job.diagram.parts, places, reach);
    const names = pinNames(pairs, places);
    const printed = netsOf(expected, (ref) => ref).map((net) => new Set(net.split(" ")));
    const rows = this.region("Lines of the picture").getByRole("listitem");
    for (let row = 0; row < (await rows.count()); ) {
      const pins = (
        ((await rows.nth(row).textContent()) ?? "").match(/\b[A-Z]+\d+:\S*\w/g) ?? []
      ).map((pin) => names.get(pin) ?? pin);
      const accept = rows.nth(row).getByRole("button", { name: "Accept" });
      const isTrue = pins.length > 1 && printed.some((net) => pins.every((pin) => net.has(pin)));
      if (!isTrue || !(await accept.isVisible())) {
        row++;
        continue;
      }
      await expect(accept).toBeEnabled({ timeout: 60_000 });
      const before = await rows.count();
      await this.hand.click(accept);
      await expect(rows).toHaveCount(before - 1);
    }
  }

  /** Takes stray ends away: on this diagram no line goes on to where nothing is printed. */
  async deleteEnds(): Promise<void> {
    const job = await this.look();
    for (const { id, at } of job.diagram.parts.filter(({ kind }) => kind === "offpage")) {
      await this.deletePart(job, id, at);
    }
  }

  async deletePart(job: Job, id: string, at: Point): Promise<void> {
    await this.hand.click(this.board, (await this.wholeSheet(job))(at));
    await expect(this.page.getByRole("heading", { name: new RegExp(`^${id} `) })).toBeVisible();
    await this.hand.click(this.button(/^Delete/));
  }

  private async layFromPalette(at: Spot, kind: PartKindName, turn: number): Promise<void> {
    await this.hand.click(this.button("Parts"));
    const parts = this.page.getByRole("dialog", { name: "Parts" });
    await this.hand.click(parts.getByRole("button", { name: new RegExp(`^${kind}`, "i") }));
    await this.hand.click(this.board, at);
    const quarters = Math.round(turn / 90) % 4;
    for (let n = 0; n < quarters; n++) await this.hand.click(this.button(/^Turn/));
  }
}

test("a photo becomes a circuit by mouse alone in fewer than 80 gestures", async ({ page }) => {
  await withoutFilePickers(page);
  await page.goto("./");
  const desk = new Desk(page);
  const { hand } = desk;
  const expected = await traced();

  await hand.click(desk.button("Jobs"));
  await hand.click(desk.button("New job"));
  await hand.chooseFile(desk.button("Choose a file"), photo.file);

  await hand.click(desk.region("Offer to square up").getByRole("button", { name: /^Square up/ }));
  const square = page.getByRole("dialog", { name: "Square up and clean" });
  await hand.sees(square, /page’s edge was found/);
  await hand.click(square.getByRole("button", { name: "Use this picture" }));
  await expect(square).toHaveCount(0, { timeout: 90_000 });

  await desk.makeRoom();
  await hand.click(desk.button("Scan desk"));
  await hand.click(desk.button("Find parts"));
  const found = desk.region("Parts found");
  await hand.sees(found.getByRole("status"), "places:");
  await hand.click(found.getByRole("button", { name: /^Place the (\d+ )?sure ones?$/ }));

  // What is wrong or missing on the board is put right by hand.
  const first = await desk.look();
  const places = placesIn(first);
  const unit = first.diagram.parts.find(({ kind }) => kind === "lamp")?.unit ?? 10;
  const onFirst = matchParts(expected.diagram.parts, first.diagram.parts, places, 4 * unit);
  test.info().annotations.push({
    type: "parts",
    description: `${onFirst.pairs.length} placed, ${onFirst.missing.map(({ id }) => id)} missing, ${onFirst.extra.map(({ id }) => id)} extra`,
  });
  for (const part of onFirst.missing) await desk.placeBy(first, places(part.at), part);
  await hand.click(found.getByRole("button", { name: "Put away what was found" }));
  for (const { id, at } of onFirst.extra) await desk.deletePart(first, id, at);

  // Words first: a line ends at them, and none of their letters is a part of one.
  await hand.click(desk.button("Read words"));
  const words = desk.region("Printed words");
  await hand.sees(words.getByRole("status"), "to write");

  await hand.click(desk.button("Trace all"));
  const nets = desk.region("Lines of the picture");
  await hand.sees(nets.getByRole("status"), /to look at|Nothing is missing/);
  await hand.click(nets.getByRole("button", { name: /^Accept all sure ones/ }));
  await hand.sees(nets.getByRole("status"), "drawn as on the picture");
  await desk.acceptTrueNets(expected, places, 4 * unit);
  await hand.click(nets.getByRole("button", { name: "Close the list of lines" }));

  // The lists share the picture's room: one is open at a time.
  await expect(words).toHaveCount(0);
  await hand.click(desk.button("Read words"));
  await hand.click(words.getByRole("button", { name: /^Confirm all \d+ sure$/ }));
  await hand.sees(words.getByRole("status"), /doubtful|has a place/);
  await hand.click(words.getByRole("button", { name: "Put the words away" }));
  await desk.deleteEnds();

  const made = await desk.save();
  const { pairs, missing, extra } = matchParts(
    expected.diagram.parts,
    made.diagram.parts,
    places,
    4 * unit,
  );
  expect(missing.map(({ id }) => id)).toEqual([]);
  expect(extra.map(({ id, kind }) => `${kind} ${id}`)).toEqual([]);
  expect(made.diagram.parts.filter(({ kind }) => kind === "offpage")).toEqual([]);
  const names = pinNames(pairs, places);
  expect(netsOf(made, (ref) => names.get(ref) ?? ref)).toEqual(netsOf(expected, (ref) => ref));
  const written = numbersOf(made);
  const right = written.filter((one) => numbersOf(expected).includes(one));
  expect(written.length).toBeGreaterThan(30);
  expect(right.length / written.length).toBeGreaterThan(0.95);
  expect(wordsOf(expected)).toEqual(expect.arrayContaining(wordsOf(made)));
  expect(wordsOf(made).length).toBeGreaterThan(4);
  test.info().annotations.push({ type: "gestures", description: String(hand.gestures) });
  expect(hand.gestures).toBeLessThan(GESTURES);
});
