import type { Locator, Page } from "@playwright/test";

/** Something that a user does, in two steps: what leads up to it, and the gesture itself. */
export interface Gesture {
  readonly what: string;
  /** Not measured. What it gives back is what the gesture needs to know. */
  readonly prepare: (page: Page, n: number) => Promise<readonly [x: number, y: number]>;
  /** By bare keys and mouse: looking for something in the page is work of the page's own thread. */
  readonly act: (page: Page, at: readonly [x: number, y: number], n: number) => Promise<void>;
}

const NOWHERE = [0, 0] as const;

const middleOf = async (place: Locator): Promise<readonly [number, number]> => {
  await place.scrollIntoViewIfNeeded();
  const box = await place.boundingBox();
  if (!box) throw new Error("not on the screen");
  return [box.x + box.width / 2, box.y + box.height / 2];
};

const click = (page: Page, [x, y]: readonly [number, number]) => page.mouse.click(x, y);

const STATIONS = ["Diagram", "Plug", "Match", "Check", "Prove", "Sheet"] as const;

const stationOf = (page: Page, name: (typeof STATIONS)[number]) =>
  page
    .getByRole("navigation", { name: "Stations" })
    .getByRole("button")
    .nth(STATIONS.indexOf(name));

const goToStation = (page: Page, name: (typeof STATIONS)[number]) => stationOf(page, name).click();

/** Nothing chosen, no dialog, the station of the diagram with its list. */
async function atDiagram(page: Page): Promise<void> {
  await goToStation(page, "Diagram");
  await page.getByRole("application", { name: "Diagram board" }).focus();
  for (let n = 0; n < 2; n++) await page.keyboard.press("Escape");
}

/** Chooses a part by the list, which brings it into the middle of the board. */
async function choosePart(page: Page, id: string): Promise<void> {
  await atDiagram(page);
  const sought = page.getByRole("searchbox", { name: "Only those with" });
  if (await sought.isVisible()) await sought.fill(id);
  await page.getByRole("button", { name: id, exact: true }).first().click();
  await page.getByRole("region", { name: "Details" }).waitFor();
  await page.waitForTimeout(400);
}

async function wireOfPart(page: Page, id: string): Promise<void> {
  await atDiagram(page);
  const sought = page.getByRole("searchbox", { name: "Only those with" });
  if (await sought.isVisible()) await sought.fill(id);
  await page
    .getByRole("button", { name: /^W\d+$/ })
    .first()
    .click();
  await page.getByRole("region", { name: "Details" }).waitFor();
  await page.waitForTimeout(400);
}

const field = (page: Page, name: string) =>
  page.getByRole("region", { name: "Details" }).getByRole("textbox", { name, exact: true }).first();

const board = (page: Page) => page.getByRole("application", { name: "Diagram board" });

async function openCell(page: Page): Promise<void> {
  await page.keyboard.press("Escape");
  await goToStation(page, "Plug");
  await page.getByRole("button", { name: /^Wire in cavity 5/ }).click();
}

/** A module with a plug of 24 ways. */
const PART = "A10";
const PLUG = `X${PART}`;

/** What opens the cavities of a row of the matches. */
const cavitiesOf = (page: Page, row: number) =>
  page
    .getByRole("region", { name: "Match" })
    .getByRole("button", { name: /^Cavity of pin / })
    .nth(row);

export const GESTURES: readonly Gesture[] = [
  {
    what: "a key in a printed word, each one an edit",
    prepare: async (page) => {
      const word = page.getByRole("textbox", { name: "Printed word of A10:3" });
      // Of the time before it may be open still.
      if (!(await word.isVisible()))
        await page.getByRole("button", { name: /^Printed word of A10:3/ }).click();
      await word.press("End");
      return NOWHERE;
    },
    act: async (page) => {
      await page.keyboard.type("X");
    },
  },
  {
    what: "leaving that field",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.press("Enter"),
  },
  {
    what: "undo",
    prepare: async (page) => {
      await board(page).focus();
      return NOWHERE;
    },
    act: (page) => page.keyboard.press("Control+z"),
  },
  {
    what: "redo",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.press("Control+y"),
  },
  {
    what: "choosing a part in the list",
    prepare: async (page) => {
      await atDiagram(page);
      const sought = page.getByRole("searchbox", { name: "Only those with" });
      if (await sought.isVisible()) await sought.fill(PART);
      await page.waitForTimeout(500);
      return middleOf(page.getByRole("button", { name: PART, exact: true }).first());
    },
    act: click,
  },
  {
    what: "a key in the label of a part",
    prepare: async (page) => {
      await choosePart(page, PART);
      await field(page, "Label").press("End");
      return NOWHERE;
    },
    act: (page) => page.keyboard.type("k"),
  },
  {
    what: "a key in the number of a wire",
    prepare: async (page) => {
      await wireOfPart(page, PART);
      await field(page, "Printed number").press("End");
      return NOWHERE;
    },
    act: (page) => page.keyboard.type("7"),
  },
  {
    what: "another id for a part",
    prepare: async (page, n) => {
      await choosePart(page, n === 0 ? "F10" : `F10${"x".repeat(n)}`);
      await field(page, "Id").fill(`F10${"x".repeat(n + 1)}`);
      return NOWHERE;
    },
    act: (page) => page.keyboard.press("Enter"),
  },
  {
    what: "dragging a part",
    prepare: async (page) => {
      await choosePart(page, PART);
      await page.waitForTimeout(300);
      return middleOf(board(page));
    },
    act: async (page, [x, y]) => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let n = 1; n <= 10; n++) await page.mouse.move(x + 4 * n, y + 2 * n);
      await page.mouse.up();
    },
  },
  {
    what: "choosing a row of the pin table",
    prepare: async (page, n) =>
      middleOf(
        page
          .getByRole("row", { name: `cavity ${1 + (n % 3)}`, exact: true })
          .locator("[data-column=verdict]"),
      ),
    act: click,
  },
  {
    what: "scrolling the pin table",
    prepare: async (page) => middleOf(page.getByRole("region", { name: "Pin table" })),
    act: async (page, [x, y]) => {
      await page.mouse.move(x, y + 60);
      for (let n = 0; n < 8; n++) await page.mouse.wheel(0, n < 4 ? 120 : -120);
    },
  },
  {
    what: "a key in the number of a wire on the machine",
    prepare: async (page) => {
      await openCell(page);
      await page
        .getByRole("dialog", { name: "Wire in cavity 5" })
        .getByRole("textbox", { name: "Printed number" })
        .press("End");
      return NOWHERE;
    },
    act: (page) => page.keyboard.type("7"),
  },
  {
    what: "another colour of a wire on the machine",
    prepare: async (page, n) => {
      await openCell(page);
      await page
        .getByRole("dialog", { name: "Wire in cavity 5" })
        .getByRole("textbox", { name: "or type it" })
        .fill(["RDWH", "BUWH", "GNWH"][n % 3] ?? "");
      return NOWHERE;
    },
    act: (page) => page.keyboard.press("Enter"),
  },
  {
    what: "a key in the note of a reading",
    prepare: async (page) => {
      await page.keyboard.press("Escape");
      await goToStation(page, "Prove");
      const enter = page.getByRole("button", { name: "Enter a reading" });
      if (await enter.isVisible()) await enter.click();
      await page.getByRole("textbox", { name: "Note" }).press("End");
      return NOWHERE;
    },
    act: (page) => page.keyboard.type("d"),
  },
  {
    what: "going to the station of the diagram",
    prepare: async (page) => {
      await page.keyboard.press("Escape");
      await goToStation(page, "Check");
      await page.waitForTimeout(800);
      return middleOf(stationOf(page, "Diagram"));
    },
    act: click,
  },
  {
    what: "going to the station of the check",
    prepare: async (page) => middleOf(stationOf(page, "Check")),
    act: click,
  },
  {
    what: "going to the station of the matches",
    prepare: async (page) => {
      await goToStation(page, "Check");
      await page.waitForTimeout(800);
      return middleOf(stationOf(page, "Match"));
    },
    act: click,
  },
  {
    what: "opening the cavities of a pin",
    prepare: async (page) => {
      await page.keyboard.press("Escape");
      return middleOf(cavitiesOf(page, 0));
    },
    act: click,
  },
  {
    what: "choosing the cavity of a pin",
    prepare: async (page, n) => {
      await page.keyboard.press("Escape");
      await cavitiesOf(page, n).click();
      // Of its own module's plug, and not the cavity that it was in before.
      await page.getByRole("combobox", { name: "Search for a cavity" }).fill(`${PLUG}:${24 - n}`);
      return NOWHERE;
    },
    act: (page) => page.keyboard.press("Enter"),
  },
  {
    what: "opening Find",
    prepare: async (page) => {
      await atDiagram(page);
      return middleOf(page.getByRole("button", { name: /^Find/ }));
    },
    act: click,
  },
  {
    what: "a key in Find",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.type("A"),
  },
  {
    what: "closing Find",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.press("Escape"),
  },
  {
    what: "opening the sheet, and the six seconds after",
    prepare: async (page) => {
      await atDiagram(page);
      return middleOf(stationOf(page, "Sheet"));
    },
    act: async (page, at) => {
      await click(page, at);
      await page.waitForTimeout(6000);
    },
  },
  {
    what: "closing the sheet",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.press("Escape"),
  },
  {
    what: "opening the list of jobs",
    prepare: async (page) => middleOf(page.getByRole("button", { name: "Jobs" })),
    act: click,
  },
  {
    what: "closing the list of jobs",
    prepare: async () => NOWHERE,
    act: (page) => page.keyboard.press("Escape"),
  },
];
