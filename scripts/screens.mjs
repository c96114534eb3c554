// npm run screens [-- NAME...]: drives a browser through scripts/screens/list.mjs. Every screen is
// taken at three sizes in both themes into .cache/screens/, to be looked at; those that a page of
// the docs shows go into docs/pictures/ too.
import "./support/node-version.mjs";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { APP, ensureBuilt } from "./support/bundle.mjs";
import { ensureBrowser } from "./support/ensure-browser.mjs";
import { ensureInstalled } from "./support/install.mjs";
import { ROOT, say } from "./support/project.mjs";

const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
];
/** @type {readonly ("light" | "dark")[]} */
const THEMES = ["light", "dark"];
/** Bytes: a page of the docs stays quick to open. */
const LARGEST_PICTURE = 300_000;

if (!(await ensureInstalled()) || !(await ensureBuilt(APP)) || !(await ensureBrowser())) {
  process.exit(1);
}
const { chromium } = await import("@playwright/test");
const { BROWSER_ARGS, browserOnPath } = await import("./support/browser.mjs");
const { serveFolder } = await import("./support/static-files.mjs");
const { lightenPicture } = await import("./support/lighten-picture.mjs");
const { freePort } = await import("./support/free-port.mjs");
const { SCREENS } = await import("./screens/list.mjs");

const asked = process.argv.slice(2);
const chosen = SCREENS.filter(({ name }) => asked.length === 0 || asked.includes(name));
if (chosen.length === 0) {
  say(`no such screen; there are ${SCREENS.map(({ name }) => name).join(", ")}`);
  process.exit(2);
}

const server = await serveFolder(join(ROOT, APP.folder), { port: await freePort() });
const executablePath = browserOnPath();
const browser = await chromium.launch({
  args: BROWSER_ARGS,
  ...(executablePath ? { executablePath } : {}),
});

/**
 * Takes one screen in a browser that has never seen the app.
 *
 * @param {import("./screens/list.mjs").Screen} screen
 * @param {{ width: number, height: number }} viewport
 * @param {"light" | "dark"} theme
 * @param {string} path
 */
async function take(screen, viewport, theme, path) {
  const touch = viewport.width < 600;
  const context = await browser.newContext({
    viewport,
    colorScheme: theme,
    reducedMotion: "reduce",
    hasTouch: touch,
  });
  try {
    const page = await context.newPage();
    await page.goto(server.url);
    await screen.steps(page, viewport);
    await page.screenshot({ path: join(ROOT, path), animations: "disabled" });
  } finally {
    await context.close();
  }
}

let failed = 0;
/** @param {string} path @param {() => Promise<void>} work */
async function attempt(path, work) {
  try {
    await work();
    say(path);
  } catch (error) {
    failed += 1;
    say(`${path}: ${String(error instanceof Error ? error.message : error).split("\n")[0]}`);
  }
}

mkdirSync(join(ROOT, ".cache", "screens"), { recursive: true });
mkdirSync(join(ROOT, "docs", "pictures"), { recursive: true });
for (const screen of chosen) {
  for (const size of SIZES) {
    if (screen.sizes && !screen.sizes.includes(size.width)) continue;
    for (const theme of THEMES) {
      const path = `.cache/screens/${screen.name}-${size.width}x${size.height}-${theme}.png`;
      await attempt(path, () => take(screen, size, theme, path));
    }
  }
  const { picture } = screen;
  if (picture) {
    const path = `docs/pictures/${screen.name}.png`;
    await attempt(path, async () => {
      await take(screen, picture, "light", path);
      const size = await lightenPicture(join(ROOT, path), LARGEST_PICTURE);
      if (size > LARGEST_PICTURE) throw new Error(`${Math.round(size / 1000)} kB is too large`);
    });
  }
}
await browser.close();
await server.close();
say(failed === 0 ? "Every screen was taken." : `${failed} could not be taken.`);
process.exit(failed === 0 ? 0 : 1);
