import { expect, test } from "vitest";
import { TipProvider } from "../../../../src/editor/app/controls/index.ts";
import { NextStep, ScanButton } from "../../../../src/editor/boards/diagram/scan/scan-button.tsx";
import { newJob } from "../../../../src/job/index.ts";
import { createSession, type ScanStep } from "../../../../src/session/index.ts";
import { show } from "../../support/screen.tsx";

/** What is marked as next among two steps and a thing that is none. */
async function marked(next: ScanStep | null) {
  const about = { icon: null, onClick: () => {} };
  const page = await show(
    createSession("job", newJob("Scan", 24)),
    <TipProvider>
      <NextStep value={next}>
        <ScanButton {...about} label="Find parts" step="parts" />
        <ScanButton {...about} label="Clean" />
        <ScanButton {...about} label="Read words" step="words" />
      </NextStep>
    </TipProvider>,
  );
  return [...page.querySelectorAll("[aria-description='Next to do']")].map(
    (one) => one.textContent,
  );
}

test("what comes next is marked, and told to who can't see it; a thing out of the order never is", async () => {
  expect(await marked("words")).toEqual(["Read words"]);
  expect(await marked("trace")).toEqual([]);
  expect(await marked(null)).toEqual([]);
});
