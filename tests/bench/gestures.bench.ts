import { join } from "node:path";
import { type Browser, chromium, type Page } from "@playwright/test";
import { BROWSER_ARGS, browserOnPath } from "../../scripts/support/browser.mjs";
import { freePort } from "../../scripts/support/free-port.mjs";
import { serveFolder } from "../../scripts/support/static-files.mjs";
import { writePintruth } from "../../src/job/index.ts";
import { pluggedBigJob } from "../support/plugged-big-job.ts";
import { GESTURES } from "./gestures/gesture-list.ts";
import { type Tasks, tasksOf } from "./gestures/longest-task.ts";
import { type Bench, median, type Row } from "./harness.ts";

/** `PINTRUTH_WIRES` takes a smaller job, for a first look. */
const WIRES = Number(process.env.PINTRUTH_WIRES ?? 10_000);
const SMALL = 20;
const AGAINST = `the same in a job of ${SMALL} wires`;
/** Each gesture is made so often, with its preparation; the first time counts like the others. */
const TIMES = 3;

const FIRST = "opening the file, on a first visit";
const AGAIN = "opening the job that was kept";

const bench: Bench = {
  title: "Gestures in a job of 10,000 wires and 50 plugs, in the browser",
  about:
    "The longest task of the page's own thread while a gesture is made and until the page has come to rest, from Chromium's trace: for so long no key, no pointer and no frame is looked after. Milliseconds of the processor, drawing included, which headless Chromium does in software and in that thread. The reference of each line is the same gesture in a job of 20 wires in the same run. Beside it: all the tasks of that thread together.",
  async run() {
    const server = await serveFolder(join(process.cwd(), "dist"), { port: await freePort() });
    const executablePath = browserOnPath();
    const browser = await chromium.launch({
      args: BROWSER_ARGS,
      ...(executablePath ? { executablePath } : {}),
    });
    try {
      const small = await measured(browser, server.url, SMALL, 1);
      const large = await measured(browser, server.url, WIRES, Math.max(1, WIRES / 200));
      return [...large].map(([what, taken]): Row => {
        const longest = middle(taken, "longest");
        const reference = middle(small.get(what) ?? [], "longest");
        return {
          what,
          median: longest,
          against: `${AGAINST}, ${reference.toFixed(1)} ms`,
          ratio: longest / reference,
          note: `${middle(taken, "together").toFixed(0)} ms together`,
        };
      });
    } finally {
      await browser.close();
      await server.close();
    }
  },
};

const middle = (taken: readonly Tasks[], which: keyof Tasks) =>
  median(taken.map((one) => one[which]));

/** Every gesture of the list on one job, opened on a first visit in the place of the demo. */
async function measured(
  browser: Browser,
  url: string,
  wires: number,
  plugs: number,
): Promise<ReadonlyMap<string, readonly Tasks[]>> {
  const file = Buffer.from(writePintruth(pluggedBigJob(wires, plugs, 0), new Map()));
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.route("**/sample-data/sweeper.pintruth", (route) =>
    route.fulfill({ body: file, contentType: "application/zip" }),
  );
  const results = new Map<string, Tasks[]>();
  const open = () => openPage(page, url);
  results.set(FIRST, [await tasksOf(browser, page, open)]);
  await settled(page);
  for (const { what, prepare, act } of GESTURES) {
    const taken: Tasks[] = [];
    results.set(what, taken);
    // What opens something is closed by the next one of the list: it is made once.
    const times = /^(opening|closing|leaving|undo|redo|a key in Find)/.test(what) ? 1 : TIMES;
    for (let n = 0; n < times; n++) {
      const at = await prepare(page, n);
      await settled(page);
      taken.push(await tasksOf(browser, page, () => act(page, at, n)));
    }
  }
  results.set(AGAIN, [await tasksOf(browser, page, open)]);
  await context.close();
  return results;
}

async function openPage(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByRole("region", { name: "Diagram" }).locator("canvas").first().waitFor();
}

/** What the preparation set going is no part of the gesture. */
const settled = (page: Page) => page.waitForTimeout(900);

export default bench;
