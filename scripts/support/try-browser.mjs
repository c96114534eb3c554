// Starts the browser that the tests would use and closes it again; exit status 1 when it won't.
import { chromium } from "@playwright/test";
import { BROWSER_ARGS, browserOnPath } from "./browser.mjs";

const executablePath = browserOnPath();
try {
  const browser = await chromium.launch({
    args: BROWSER_ARGS,
    timeout: 60_000,
    ...(executablePath ? { executablePath } : {}),
  });
  await browser.close();
} catch (error) {
  // The first line says what is wrong; the rest is the browser's own log.
  console.error(String(error instanceof Error ? error.message : error).split("\n")[0]);
  process.exit(1);
}
