import { act, useRef, useState } from "react";
import { expect, test } from "vitest";
import { useKeptFocus } from "../../../../src/editor/boards/diagram/scan/use-kept-focus.ts";
import { newJob } from "../../../../src/job/index.ts";
import { createSession } from "../../../../src/session/index.ts";
import { show } from "../../support/screen.tsx";

// jsdom lays nothing out.
Element.prototype.scrollIntoView ??= () => {};

/** A list of rows that go when they are accepted, with a button for all of them. */
function List({ of }: { of: readonly string[] }) {
  const panel = useRef<HTMLElement>(null);
  const [rows, setRows] = useState(of);
  const keepFocus = useKeptFocus(panel);
  const without = (row: string) => setRows(rows.filter((one) => one !== row));
  return (
    <section ref={panel} {...keepFocus}>
      {rows.includes("sure") && (
        <button type="button" onClick={() => without("sure")}>
          Accept all sure
        </button>
      )}
      <button type="button" data-rest>
        Close
      </button>
      {rows.map((row) => (
        <p key={row}>
          <button type="button" data-next>
            {row}
          </button>
          <button type="button" onClick={() => without(row)}>
            Accept {row}
          </button>
        </p>
      ))}
    </section>
  );
}

const showList = (of: readonly string[]) =>
  show(createSession("job", newJob("Lines", 24)), <List of={of} />);

/** Presses a button as a hand does: it has the keys first. */
async function press(page: HTMLElement, name: string): Promise<void> {
  const button = [...page.querySelectorAll("button")].find((one) => one.textContent === name);
  if (!button) throw new Error(`no button ${name}`);
  await act(async () => button.focus());
  await act(async () => button.click());
}
const focused = () => document.activeElement?.textContent;

test("after all sure ones the first doubtful one has the keys", async () => {
  const page = await showList(["sure", "doubtful", "later"]);
  await press(page, "Accept all sure");
  expect(focused()).toBe("doubtful");
});

test("after one of a list, the one that came to its place; after the last, the one before it", async () => {
  const page = await showList(["a", "b", "c"]);
  await press(page, "Accept b");
  expect(focused()).toBe("c");
  await press(page, "Accept c");
  expect(focused()).toBe("a");
});

test("when nothing is left to do, the panel's own place to rest", async () => {
  const page = await showList(["a"]);
  await press(page, "Accept a");
  expect(focused()).toBe("Close");
});
