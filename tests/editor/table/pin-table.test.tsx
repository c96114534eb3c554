import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { unbroken } from "../../../src/editor/panels/unbroken.ts";
import { PinTable } from "../../../src/editor/table/index.ts";

import { type Job, newJob } from "../../../src/job/index.ts";
import { createSession, newDraft } from "../../../src/session/index.ts";
import { key, send, show, type } from "../support/screen.tsx";
import { click, named, sweeper } from "../support/sweeper.ts";

async function table() {
  const session = createSession("one", sweeper());
  const page = await show(session, <PinTable />);
  const row = (name: string) => {
    const found = page.querySelector<HTMLElement>(`tr[aria-label="${name}"]`);
    if (!found) throw new Error(`no row ${name}`);
    return found;
  };
  return { session, page, row };
}

test("printed, circuit and verdict stand side by side, a wrong word struck through", async () => {
  const { row } = await table();
  const wrong = row("cavity 4");
  expect(wrong.querySelector("s")?.textContent).toBe("OUT");
  expect(wrong.textContent).toContain("→ ground");
  expect(wrong.querySelector('[data-column="verdict"]')?.textContent).toBe("contradicted");
  expect(row("cavity 6").querySelector('[data-column="verdict"]')?.textContent).toBe("agrees");
  expect(row("cavity 6").textContent).toContain("drawn as GYRD");
  expect(row("cavity 7").textContent).toContain("empty");
  expect(row("cavity 8").textContent).toContain("blocked");
});

/** What a cell says, whichever of its spaces may break. */
const spaced = (cell: Element | null) => cell?.textContent?.replaceAll("\u00a0", " ");

test("a number is never torn from its unit or month", () => {
  expect(unbroken("as expected, 16 Sep, 1 more")).toBe("as expected, 16\u00a0Sep, 1\u00a0more");
  expect(unbroken("11.70 V to A1 pin 4, S1 at run")).toBe("11.70\u00a0V to A1 pin 4, S1 at run");
});

test("a confirmed cavity says by what, and what else was measured speaks beside it", async () => {
  const { row } = await table();
  const meter = (name: string) => spaced(row(name).querySelector('[data-column="meter"]'));
  // R2 of the demo: a test lamp burns at 24.6 V; R11: plugged in, only 11.7 V reach the module.
  expect(meter("cavity 1")).toMatch(/24\.60 V.*confirmed by volts with a test lamp as load/);
  expect(meter("cavity 1")).toContain(
    "! 11.70 V to A1 pin 4, S1 at run, A1 plugged in: not as expected",
  );
  // Open-circuit volts confirm nothing: they come through one strand.
  expect(meter("cavity 2")).toMatch(/24\.70 V.*as expected/);
  expect(meter("cavity 2")).not.toContain("confirmed");
});

test("a cavity shows the reading that belongs to it, not one that lies between it and another", async () => {
  const { row } = await table();
  // R6, cavity 4 to chassis, was taken before R11, which lies between pins 1 and 4.
  expect(spaced(row("cavity 4").querySelector('[data-column="meter"]'))).toBe(
    "22.4 Ωnot as expected, 16 Sep, 1 more! 11.70 V from A1 pin 1, S1 at run, A1 plugged in: not as expected",
  );
});

test("what two roles would show is measured, not confirmed, and a reading to another pin says so", async () => {
  const job: Job = JSON.parse(readFileSync("sample-data/trailer-iso-12098/job.json", "utf8"));
  const page = await show(createSession("one", job), <PinTable />);
  const meter = (name: string) =>
    page.querySelector(`tr[aria-label="cavity ${name}"] [data-column="meter"]`);
  expect(spaced(meter("4"))).toBe(
    "0.10 Ωfits a ground or an input, 2 Oct, 2 morethe meter leaves 8 of 10 roles",
  );
  expect(meter("4")?.querySelector("svg")).toBeNull();
  expect(spaced(meter("9"))).toBe("25.10 Vto X1 cavity 4, as expected, 2 Oct");
});

test("a tap on a row selects its cavity, and the row says so", async () => {
  const { session, row } = await table();
  await send(row("cavity 3"), click());
  expect(session.get().selection).toEqual(["X1:3"]);
  expect(row("cavity 3").getAttribute("aria-selected")).toBe("true");
});

test("while the pad asks for a lead, a tapped row is its place", async () => {
  const { session, row } = await table();
  session.show({ draft: newDraft() });
  await send(row("cavity 2"), click());
  expect(session.get().draft).toMatchObject({ red: "X1:2", black: "chassis", asks: null });
  expect(session.get().selection).toEqual([]);
});

test("arrow keys lead from row to row, Enter opens and closes", async () => {
  const { session, page, row } = await table();
  await send(row("cavity 1"), key("ArrowDown"));
  expect(session.get().selection).toEqual(["X1:2"]);
  expect(document.activeElement).toBe(row("cavity 2"));
  await send(row("cavity 2"), key("End"));
  expect(session.get().selection).toEqual(["X1:8"]);
  await send(row("cavity 8"), key("ArrowDown"));
  expect(session.get().selection).toEqual(["X1:8"]);
  await send(row("cavity 4"), key("Enter"));
  expect(page.textContent).toContain("From cavity X1:4 the line runs");
  await send(row("cavity 4"), key("Enter"));
  expect(page.textContent).not.toContain("From cavity X1:4 the line runs");
});

test("Tab comes to one row only: the chosen one", async () => {
  const { page, row } = await table();
  await send(row("cavity 5"), click());
  const reachable = [...page.querySelectorAll('tr[tabindex="0"]')];
  expect(reachable.map((one) => one.getAttribute("aria-label"))).toEqual(["cavity 5"]);
});

test("a printed word is changed in place, in one edit, and its row follows at once", async () => {
  const { session, page, row } = await table();
  await send(named(row("cavity 4"), /^Printed word of A1:4/), click());
  const field = row("cavity 4").querySelector("input");
  if (!field) throw new Error("no field");
  await type(field, "GND");
  await send(field, new FocusEvent("focusout", { bubbles: true }));
  expect(session.get().history.done.map((edit) => edit.label)).toEqual([
    "Change the word of A1 pin 4",
  ]);
  expect(row("cavity 4").querySelector("s")).toBeNull();
  expect(row("cavity 4").querySelector('[data-column="verdict"]')?.textContent).toBe("agrees");
  expect(page.querySelector("input")).toBeNull();
});

test("an open row says what the meter leaves and which reading ruled the rest out; a tap chooses it", async () => {
  const { session, page, row } = await table();
  await send(row("cavity 1"), key("Enter"));
  expect(page.textContent).toContain("Still possible: a permanent feed, a switched feed");
  const line = named(page, /^Ruled out: a ground.*reading R2 \(24\.60 V; volts with a test lamp/);
  await send(line, click());
  expect(session.get().selection).toEqual(["R2"]);
  await send(row("cavity 6"), key("Enter"));
  expect(page.textContent).toContain("Nothing yet: only volts that hold under a test lamp");
});

test("an open row offers readings, and taking one fills the pad", async () => {
  const { session, page, row } = await table();
  await send(row("cavity 4"), key("Enter"));
  await send(named(page, /^Take this reading: ohms, cavity 4 to chassis/), click());
  expect(session.get().draft).toMatchObject({
    quantity: "ohms",
    red: "X1:4",
    black: "chassis",
    value: "",
    asks: null,
  });
});

test("without a module or a plug the table says what it will show", async () => {
  const session = createSession("one", newJob("New", 24));
  const page = await show(session, <PinTable />);
  expect(page.textContent).toContain("Each cavity of the plug becomes a row here");
});
