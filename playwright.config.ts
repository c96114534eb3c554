import { defineConfig } from "@playwright/test";
import { BROWSER_ARGS, browserOnPath } from "./scripts/support/browser.mjs";
import { freePort } from "./scripts/support/free-port.mjs";

/** Set it to drive an app that is already being served, e.g. by `npm run dev`. */
const served = process.env.PINTRUTH_URL;
// Kept in the environment, because every worker reads this file anew and must find the same port.
process.env.PINTRUTH_E2E_PORT ??= String(await freePort());
const port = process.env.PINTRUTH_E2E_PORT;
const executablePath = browserOnPath();

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "test-results",
  forbidOnly: Boolean(process.env.CI),
  fullyParallel: true,
  workers: 2,
  retries: 0,
  timeout: 90_000,
  expect: { timeout: 15_000 },
  globalTimeout: 7 * 60_000,
  reporter: "list",
  use: {
    baseURL: served ?? `http://127.0.0.1:${port}/`,
    viewport: { width: 1440, height: 900 },
    actionTimeout: 30_000,
    screenshot: "only-on-failure",
    launchOptions: { args: BROWSER_ARGS, ...(executablePath ? { executablePath } : {}) },
  },
  ...(served
    ? {}
    : {
        webServer: {
          command: `node scripts/start.mjs --port ${port}`,
          url: `http://127.0.0.1:${port}/`,
          timeout: 180_000,
          stdout: "ignore",
        },
      }),
});
