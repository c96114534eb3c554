import { cleanPage, offerSquaring, squareUp } from "./page-photo.mjs";
import {
  chooseStandard,
  drawFromPhoto,
  fillPhoto,
  openLibrary,
  showHalves,
  showOtherHalf,
  tapWire,
} from "./plug-faces.mjs";

/**
 * Every screen worth a look, in the order in which a job meets them. Each starts in a browser that
 * has never seen the app, which opens with the demo.
 *
 * @typedef {import("@playwright/test").Page} Page
 * @typedef {{ width: number, height: number }} Size
 * @typedef {object} Screen
 * @property {string} name kebab-case: the picture's file name
 * @property {(page: Page, size: Size) => Promise<void>} steps from the page just opened to the screen
 * @property {readonly number[]} [sizes] the widths that have this screen; all when absent
 * @property {Size} [picture] taken for the docs too, in this size
 */

const PHONE = 390;
const DESK = { width: 1280, height: 800 };

/** @param {Size} size */
const onPhone = (size) => size.width <= PHONE;

/** Waits until the demo is open, checked and saved. @param {Page} page */
async function demo(page) {
  await page
    .getByText(/^[1-9]\d* contradictions?/)
    .first()
    .waitFor();
  await page.waitForLoadState("networkidle");
  // The picture of the diagram is decoded after the rest is there.
  await page.waitForTimeout(1500);
}

/**
 * Goes to a station: along the path at the top, or by the bar under a phone's thumb.
 *
 * @param {Page} page @param {Size} size @param {RegExp} name @param {RegExp} [phoneName]
 */
async function go(page, size, name, phoneName = name) {
  const bar = page.getByRole("navigation", { name: onPhone(size) ? "Screens" : "Stations" });
  await bar.getByRole("button", { name: onPhone(size) ? phoneName : name }).click();
}

/** @param {string} keys a chord that works from anywhere @returns {Screen["steps"]} */
const demoThen = (keys) => async (page) => {
  await demo(page);
  await page.keyboard.press(keys);
};

/** @type {Screen["steps"]} */
async function cavityFour(page, size) {
  await demo(page);
  const name = onPhone(size) ? "Open cavity 4" : /^Cavity 4,/;
  await page.getByRole("button", { name }).first().click();
  // The path runs from the pin to its end.
  await page.waitForTimeout(800);
}

/** Opens the scan desk on the diagram. @param {Page} page @param {Size} size */
async function scanDesk(page, size) {
  if (onPhone(size)) await go(page, size, /Diagram/);
  await page.getByRole("button", { name: "Scan desk", exact: true }).click();
}

/** @type {Screen["steps"]} */
async function followPinFour(page, size) {
  await cavityFour(page, size);
  await scanDesk(page, size);
  await page.getByRole("button", { name: "Follow a line" }).click();
  await page.getByRole("region", { name: "The followed line" }).waitFor({ timeout: 120_000 });
}

/** @type {Screen["steps"]} */
async function traceAll(page, size) {
  await demo(page);
  await scanDesk(page, size);
  await page.getByRole("button", { name: "Trace all" }).click();
  await page.getByRole("region", { name: "Lines of the picture" }).waitFor({ timeout: 120_000 });
}

/** A change recorded on the machine of the demo: a lamp between two pins, a fuse replaced. @param {Page} page */
async function workLampFitted(page) {
  await demo(page);
  await page.getByRole("button", { name: /^Machine:/ }).click();
  await page.getByRole("menuitem", { name: "Retrofits, repairs and options" }).click();
  await page.getByRole("textbox", { name: "What was done" }).fill("Work lamp fitted by the dealer");
  await page.getByRole("button", { name: "Record on the diagram" }).click();
  await page.getByRole("combobox", { name: "Part", exact: true }).selectOption("lamp");
  await page.getByRole("button", { name: "Add part" }).click();
  await page.keyboard.press("Escape");
  const ends = page.getByRole("combobox", { name: "Wire from" });
  const lamp = (await ends.locator("option").last().getAttribute("value"))?.split(":")[0];
  for (const [from, to] of [
    ["A1:6", `${lamp}:1`],
    [`${lamp}:2`, "X34:1"],
  ]) {
    await ends.selectOption(/** @type {string} */ (from));
    await page
      .getByRole("combobox", { name: "to", exact: true })
      .selectOption(/** @type {string} */ (to));
    await page.getByRole("button", { name: "Add wire" }).click();
    await page.keyboard.press("Escape");
  }
  await page.getByRole("button", { name: "F3", exact: true }).click();
  await page.getByRole("button", { name: /^Replace on this machine/ }).click();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^Back to the diagram/ }).click();
  await page.keyboard.press("f");
  await page.waitForTimeout(800);
}

/**
 * A machine more, some of whose wires are not as drawn, beside that of the demo.
 *
 * @param {Page} page @param {Size} size
 */
async function secondMachine(page, size) {
  if (onPhone(size)) {
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("menuitem", { name: "Machines", exact: true }).click();
    await page.getByRole("button", { name: "Add a machine" }).click();
  } else {
    await page.getByRole("button", { name: /^Machine:/ }).click();
    await page.getByRole("menuitem", { name: "Add a machine" }).click();
  }
  await page.getByRole("button", { name: "Close" }).click();
  await page.keyboard.press("c");
  for (const [mark, code] of [
    ["1", "WHT/RED"],
    ["2", "YE"],
    ["6", "gr/rt"],
  ]) {
    const cell = `Wire in cavity ${mark} of Machine 2`;
    await page.getByRole("button", { name: cell }).click();
    await page.getByRole("textbox", { name: "or type it" }).fill(code ?? "");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
  }
}

/** @type {readonly Screen[]} */
export const SCREENS = [
  { name: "boards", steps: demo },
  { name: "cavity", picture: DESK, steps: cavityFour },
  {
    name: "diagram",
    sizes: [PHONE],
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Diagram/);
    },
  },
  {
    name: "plug",
    sizes: [PHONE],
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Plug/);
    },
  },
  {
    name: "findings",
    sizes: [PHONE],
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Findings/);
    },
  },
  { name: "changes", picture: DESK, sizes: [1440, 1024], steps: workLampFitted },
  {
    name: "compare",
    picture: DESK,
    steps: async (page, size) => {
      await demo(page);
      await secondMachine(page, size);
      const table = page.getByRole("region", { name: "Comparison" });
      await table.evaluate((element) => element.scrollTo({ top: 0, left: 130 }));
    },
  },
  {
    name: "operate",
    picture: DESK,
    steps: async (page, size) => {
      await demo(page);
      if (onPhone(size)) await go(page, size, /Diagram/);
      await page.keyboard.press("o");
      const panel = page.getByRole("region", { name: "Operate", exact: true });
      const turn = async (/** @type {string} */ name, /** @type {string} */ position) =>
        panel
          .getByRole("group", { name })
          .getByRole("radio", { name: position, exact: true })
          .locator("..")
          .click();
      await turn("S1 key switch", "run");
      await turn("S2 pump button, cab", "hold pressed");
      await page.keyboard.press("l");
      await page.keyboard.press("f");
      await panel.getByRole("tab", { name: "Steps" }).click();
      await page.waitForTimeout(500);
    },
  },
  { name: "other-side", sizes: [1440, 1024], steps: demoThen("x") },
  ...[
    { name: "photo-face", picture: DESK, step: fillPhoto },
    { name: "photo-plug", step: drawFromPhoto },
    { name: "photo-colour", picture: DESK, step: tapWire },
    { name: "face-library", step: openLibrary },
    { name: "standard-face", step: chooseStandard },
    { name: "halves", picture: DESK, step: showHalves },
    { name: "other-half", step: showOtherHalf },
  ].map(({ step, ...screen }) => ({
    ...screen,
    /** @type {Screen["steps"]} */
    steps: async (page, size) => {
      await demo(page);
      if (onPhone(size)) await go(page, size, /Plug/);
      await step(page);
    },
  })),
  ...[
    { name: "square-offer", step: offerSquaring },
    { name: "square-up", picture: DESK, step: squareUp },
    { name: "clean", step: cleanPage },
  ].map(({ step, ...screen }) => ({
    ...screen,
    /** @type {Screen["steps"]} */
    steps: async (page) => {
      await demo(page);
      await step(page);
    },
  })),
  { name: "follow-line", picture: DESK, steps: followPinFour },
  { name: "trace-all", steps: traceAll },
  {
    name: "match",
    picture: DESK,
    sizes: [1440, 1024],
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Match/);
      await page.keyboard.press("m");
    },
  },
  {
    name: "reading",
    picture: DESK,
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Prove/, /Reading/);
    },
  },
  {
    name: "trial",
    picture: DESK,
    steps: async (page, size) => {
      await demo(page);
      await go(page, size, /Prove/, /Reading/);
      await page.keyboard.press("y");
      const form = page.getByRole("form", { name: "Trial" });
      for (const [name, position] of /** @type {const} */ ([
        [/^S1 /, "run"],
        [/^S2 /, "pressed"],
        [/^motor M1/, "still"],
        [/^lamp P1/, "lit"],
      ]))
        await form.getByRole("group", { name }).getByText(position, { exact: true }).click();
      const ahead = form.getByRole("region", { name: "What is done" });
      await ahead.evaluate((element) => element.scrollIntoView({ block: "start" }));
      await page.waitForTimeout(300);
    },
  },
  {
    name: "sheet",
    picture: DESK,
    steps: async (page) => {
      await demo(page);
      await page.keyboard.press("Control+p");
      await page.getByText("Setting the sheet").waitFor();
      await page.getByText("Setting the sheet").waitFor({ state: "hidden", timeout: 60_000 });
      await page.waitForTimeout(300);
    },
  },
  { name: "find", steps: demoThen("Control+f") },
  {
    name: "jobs",
    sizes: [1440, 1024],
    steps: async (page) => {
      await demo(page);
      await page.getByRole("button", { name: "Jobs" }).click();
    },
  },
  { name: "keys", sizes: [1440, 1024], steps: demoThen("?") },
  {
    name: "empty",
    steps: async (page, size) => {
      await demo(page);
      if (onPhone(size)) await page.getByRole("button", { name: "More" }).first().click();
      await page
        .getByRole(onPhone(size) ? "menuitem" : "button", { name: "Jobs" })
        .first()
        .click();
      await page.getByRole("button", { name: "New job" }).first().click();
      await page.waitForTimeout(500);
    },
  },
];
