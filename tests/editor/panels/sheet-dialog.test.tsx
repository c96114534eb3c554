import { expect, test } from "vitest";
import { SheetDialog } from "../../../src/editor/panels/sheet-dialog.tsx";
import { createSession } from "../../../src/session/index.ts";
import { show } from "../support/screen.tsx";
import { sweeper } from "../support/sweeper.ts";

test("while the sheet is being set, the preview says so and nothing can be saved yet", async () => {
  await show(
    createSession("one", sweeper()),
    <SheetDialog
      onClose={() => {
        // stays open
      }}
    />,
  );
  const preview = document.querySelector('[aria-label="Preview"]');
  expect(preview?.getAttribute("aria-busy")).toBe("true");
  expect(preview?.querySelector('[role="status"]')?.textContent).toBe("Setting the sheet…");
  const save = [...document.querySelectorAll("a")].find((one) => /Save PDF/.test(one.textContent));
  expect(save?.getAttribute("aria-disabled")).toBe("true");
});
