import { expect, test } from "@playwright/test";

const CONTRADICTIONS = /^[1-9]\d* contradictions?$/;

test("a first visit opens the demo, with its contradictions on the screen", async ({ page }) => {
  await page.goto("./");
  await expect(page.getByRole("textbox", { name: "Title of the job" })).toHaveValue(/^Sweeper 14/);
  await expect(page.getByText(CONTRADICTIONS).first()).toBeVisible();
});

test("nothing is asked of any other host, and nothing goes wrong on the way", async ({
  page,
  baseURL,
}) => {
  const elsewhere: string[] = [];
  const wrong: string[] = [];
  const home = new URL(baseURL ?? "").host;
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (/^(https?|wss?):$/.test(url.protocol) && url.host !== home) elsewhere.push(url.href);
  });
  page.on("console", (message) => {
    if (message.type() === "error") wrong.push(message.text());
  });
  page.on("pageerror", (error) => wrong.push(error.message));
  page.on("response", (response) => {
    if (response.status() >= 400) wrong.push(`${response.status()} ${response.url()}`);
  });
  await page.goto("./");
  await expect(page.getByText(CONTRADICTIONS).first()).toBeVisible();
  await page.waitForLoadState("networkidle");
  expect(elsewhere).toEqual([]);
  expect(wrong).toEqual([]);
});
