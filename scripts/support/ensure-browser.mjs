import { browserOnPath, programOnPath } from "./browser.mjs";
import { say } from "./project.mjs";
import { run, runNode } from "./run.mjs";

const HOW_TO_GET_ONE =
  "The browser tests need Chromium, Chrome or Edge: install one so that it is on the PATH, or set " +
  "PINTRUTH_BROWSER to its program, or run `npx playwright install --with-deps chromium`.";

/** Whether a browser, or Playwright's own for undefined, really starts here. */
const starts = async () =>
  (await runNode(["scripts/support/try-browser.mjs"], { seconds: 90 })) === 0;

/**
 * Finds or gets a browser for the tests: the one on the PATH, else Playwright's own, else the
 * system's package where this user may install it.
 *
 * @returns {Promise<boolean>} false when there is none; how to get one is then on stderr
 */
export async function ensureBrowser() {
  if (browserOnPath() !== undefined) {
    if (await starts()) return true;
    say(`${browserOnPath()} does not start.`);
  } else {
    if (await starts()) return true;
    say("No browser on the PATH: fetching Playwright's own ...");
    const fetched = await runNode(["node_modules/@playwright/test/cli.js", "install", "chromium"], {
      env: { PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: "20000" },
      seconds: 300,
    });
    if (fetched === 0 && (await starts())) return true;
    if (await fromSystemPackages()) {
      if (await starts()) return true;
    }
  }
  say(HOW_TO_GET_ONE);
  return false;
}

/** Debian and its kin, for root only: anyone else would be asked for a password. */
async function fromSystemPackages() {
  if (process.getuid?.() !== 0 || !programOnPath(["apt-get"])) return false;
  say("Installing the system's own Chromium ...");
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  const options = { env, seconds: 600 };
  await run("apt-get", ["update", "-qq"], options);
  for (const name of ["chromium", "chromium-browser"]) {
    const args = ["install", "-y", "-qq", "--no-install-recommends", name];
    if ((await run("apt-get", args, options)) === 0) return true;
  }
  return false;
}
