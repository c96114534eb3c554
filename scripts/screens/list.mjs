/**
 * Every screen worth a look, in the order in which a job meets them. Each starts in a browser that
 * has never seen the app, which opens with the demo.
 *
 * @typedef {import("@playwright/test").Page} Page
 * @typedef {{ width: number, height: number }} Size
 * @typedef {object} Screen
 * @property {string} name kebab-case: the picture's file name
 * @property {(page: Page, size: Size) => Promise<void>} steps from the demo to the screen
 * @property {readonly number[]} [sizes] the widths that have this screen; all when absent
 * @property {Size} [picture] taken for the docs too, in this size
 */

/** Waits until the demo is open. @param {Page} page */
async function demo(page) {
  await page.getByText("Opening the job").waitFor({ state: "detached" });
  await page.waitForLoadState("networkidle");
}

/** @type {readonly Screen[]} */
export const SCREENS = [{ name: "boards", picture: { width: 1440, height: 900 }, steps: demo }];
