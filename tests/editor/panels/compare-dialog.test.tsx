import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { CompareDialog } from "../../../src/editor/panels/index.ts";
import { createSession, type Session } from "../../../src/session/index.ts";
import { smallJob } from "../../session/support/small-job.ts";
import { commit, press, send, show } from "../support/screen.tsx";

function twoMachines(): Session {
  const session = createSession("k", smallJob());
  session.edit("Add", (draft) => {
    draft.machines.push({
      id: "other",
      name: "Sweeper 15",
      wires: [{ cavity: "X1:1", colour: { base: "WH", tracer: "RD" } }],
      readings: [],
      trials: [],
    });
  });
  return session;
}

/** Opens the dialog; it lies in the page's body, not in what holds it. */
async function opened(session: Session): Promise<HTMLElement> {
  URL.createObjectURL = () => "blob:table";
  URL.revokeObjectURL = () => {};
  await show(
    session,
    <TipProvider>
      <CompareDialog />
    </TipProvider>,
  );
  return document.body;
}

const textsOf = (page: HTMLElement) =>
  [...page.querySelectorAll("tbody tr")].map((row) =>
    [...row.children].map((cell) => cell.textContent ?? ""),
  );

test("diagram and machines stand side by side, and what differs is said in words", async () => {
  const page = await opened(twoMachines());
  const heads = [...page.querySelectorAll("thead th")].map((head) => head.textContent);
  expect(heads).toEqual(["Cavity", "Diagram", "Sweeper 14", "Sweeper 15"]);
  const [first, second] = textsOf(page);
  expect(first?.[1]).toContain("RDWH");
  expect(first?.[3]).toMatch(/WHRD.*base and tracer exchanged/);
  expect(second?.[1]).toContain("BN");
  expect(second?.[2]).toMatch(/BU.*colour not as drawn/);
  expect(page.querySelector('[role="status"]')?.textContent).toBe(
    "Differences in 2 of 4 cavities.",
  );
});

test("only the differences are shown when asked", async () => {
  const page = await opened(twoMachines());
  expect(textsOf(page)).toHaveLength(4);
  const box = page.querySelector<HTMLInputElement>('input[type="checkbox"]');
  await send(box as HTMLElement, new MouseEvent("click", { bubbles: true, cancelable: true }));
  expect(textsOf(page).map(([mark]) => mark)).toEqual(["1A1:1", "2A1:2"]);
});

test("a colour set in a cell is one edit of that cell's machine, and the table follows", async () => {
  const session = twoMachines();
  const page = await opened(session);
  const { done } = session.get().history;
  const cell = [...page.querySelectorAll("button")].find((one) =>
    one.getAttribute("aria-label")?.startsWith("Wire in cavity 2 of Sweeper 15"),
  );
  await press(page, cell?.getAttribute("aria-label") ?? "");
  const field = page.querySelector<HTMLInputElement>('input[placeholder="BNBK"]');
  await commit(field as HTMLInputElement, "ws/sw");
  expect(session.get().job.machines[1]?.wires).toContainEqual({
    cavity: "X1:2",
    colour: { base: "WH", tracer: "BK" },
  });
  expect(session.get().history.done.length).toBe(done.length + 1);
  expect(textsOf(page)[1]?.[3]).toMatch(/WHBK.*colour not as drawn/);
  await commit(field as HTMLInputElement, "bl");
  expect(page.querySelector('[role="alert"]')?.textContent).toMatch(/black \(BK\) or blue \(BU\)/);
  const wiresOf = () => session.get().job.machines[1]?.wires;
  expect(wiresOf()).toContainEqual({ cavity: "X1:2", colour: { base: "WH", tracer: "BK" } });
  expect(session.get().history.done.length).toBe(done.length + 1);
  // What may be meant is a tap away.
  const popover = page.querySelector<HTMLElement>('[aria-label="Wire in cavity 2 of Sweeper 15"]');
  await press(popover as HTMLElement, "BU");
  expect(wiresOf()).toContainEqual({ cavity: "X1:2", colour: { base: "BU" } });
  expect(page.querySelector('[role="alert"]')).toBeNull();
});

test("number, size and note of a wire are noted in a cell, each as one edit of that machine", async () => {
  const session = twoMachines();
  const page = await opened(session);
  const trigger = [...page.querySelectorAll("button")].find((one) =>
    one.getAttribute("aria-label")?.startsWith("Wire in cavity 3 of Sweeper 15"),
  );
  await press(page, trigger?.getAttribute("aria-label") ?? "");
  const popover = page.querySelector('[aria-label="Wire in cavity 3 of Sweeper 15"]');
  const field = (name: string) => {
    const label = [...(popover?.querySelectorAll("label") ?? [])].find(
      ({ textContent }) => textContent === name,
    );
    const input = document.getElementById(label?.htmlFor ?? "");
    if (!(input instanceof HTMLInputElement)) throw new Error(`no field ${name}`);
    return input;
  };
  const wires = () =>
    session.get().job.machines[1]?.wires.find(({ cavity }) => cavity === "X1:3") ?? null;
  const { length } = session.get().history.done;
  await commit(field("Printed number"), "31-5");
  await commit(field("Size"), "2,5 mm²");
  await commit(field("Note"), "rubbed");
  expect(wires()).toEqual({ cavity: "X1:3", number: "31-5", mm2: 2.5, note: "rubbed" });
  const { done } = session.get().history;
  expect(done.slice(length).map(({ label }) => label)).toEqual([
    "Note the wire number in X1:3 of Sweeper 15",
    "Note the wire size in X1:3 of Sweeper 15",
    "Note something of the wire in X1:3 of Sweeper 15",
  ]);
  expect(textsOf(page)[2]?.[3]).toContain("31-5 2.5 mm²");
  await commit(field("Size"), "thick");
  expect(page.querySelector('[role="alert"]')?.textContent).toBe("A size in mm², as in 1.5");
  expect(wires()?.mm2).toBe(2.5);
  session.undo();
  session.undo();
  session.undo();
  expect(wires()).toBeNull();
});
