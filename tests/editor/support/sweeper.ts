import { readFileSync } from "node:fs";
import type { Job } from "../../../src/job/index.ts";

/** The demo, as it comes with the program; tests run from the project's root. */
export const sweeper = (): Job => JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));

/** The button or link with exactly this name, as a screen reader calls it. */
export function named(page: ParentNode, name: string | RegExp): HTMLElement {
  const fits = (text: string) => (typeof name === "string" ? text === name : name.test(text));
  const found = [...page.querySelectorAll<HTMLElement>("button, a, input, [role]")].find((one) =>
    fits((one.getAttribute("aria-label") ?? one.textContent ?? "").trim()),
  );
  if (!found) throw new Error(`nothing called ${name}`);
  return found;
}

export const click = () => new MouseEvent("click", { bubbles: true, cancelable: true });
