import { act } from "react";
import { expect, test } from "vitest";
import { ModuleEditor } from "../../../src/editor/boards/diagram/details/module-editor.tsx";
import { CavityDetails } from "../../../src/editor/boards/plug/cavity-details.tsx";
import { PinTable } from "../../../src/editor/table/index.ts";
import type { Job, PartOf } from "../../../src/job/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { choose, key, press, send, show } from "../support/screen.tsx";
import { sweeper } from "../support/sweeper.ts";

const QUESTION = "What does “WSP2” mean here?";

function moduleOf(job: Job): PartOf<"module"> {
  const module = job.diagram.parts.find(({ id }) => id === "A1");
  if (module?.kind !== "module") throw new Error("no module A1");
  return module;
}

/** The demo with a word that nobody knows on pin 6, a lamp's, and its own number on pin 4. */
function open() {
  const job = sweeper();
  for (const pin of moduleOf(job).pins) {
    if (pin.id === "4") pin.printed = "4";
    if (pin.id === "6") pin.printed = "WSP2";
  }
  return createSession("words", job);
}

/** The list that answers the question; null where nobody asks. */
function asked(page: ParentNode): HTMLSelectElement | null {
  const label = [...page.querySelectorAll("label")].find((one) => one.textContent === QUESTION);
  return label ? document.querySelector<HTMLSelectElement>(`[id="${label.htmlFor}"]`) : null;
}

const answer = async (page: ParentNode, role: string) => {
  const list = asked(page);
  if (!list) throw new Error("nobody asks");
  await choose(list, role);
};

const row = (page: ParentNode, mark: string) => {
  const found = page.querySelector<HTMLElement>(`tr[aria-label="cavity ${mark}"]`);
  if (!found) throw new Error(`no row ${mark}`);
  return found;
};

test("the table asks what an unknown word means, and of no other; the answer is one step", async () => {
  const session = open();
  const page = await show(session, <PinTable />);
  expect(page.querySelectorAll('[data-column="printed"] select')).toHaveLength(1);
  expect(row(page, "6").textContent).toContain("unproven");
  await answer(row(page, "6"), "output");
  expect(session.get().job.words).toEqual([{ printed: "WSP2", role: "output" }]);
  expect(session.get().history.done).toHaveLength(1);
  expect(row(page, "6").textContent).toContain("agrees");
  expect(asked(page)).toBeNull();
});

const LEGEND = "Go by the maker's legend, not by what the circuit shows.";

test("wherever a meaning is chosen, it is said what to go by", async () => {
  const session = open();
  session.show({ selection: ["A1:6"] });
  const table = await show(session, <PinTable />);
  const group = asked(row(table, "6"))?.querySelector("optgroup");
  expect(group?.label).toBe(LEGEND);
  expect(group?.querySelectorAll("option").length).toBeGreaterThan(1);
  const cavity = await show(session, <CavityDetails />);
  const said = () => cavity.textContent?.split(LEGEND).length;
  expect(said()).toBe(2);
  for (const word of ["EARTH", "WSP2"]) {
    session.edit("Print", (draft) => {
      const pin = moduleOf(draft).pins.find(({ id }) => id === "6");
      if (pin) pin.printed = word;
      draft.words = word === "WSP2" ? [{ printed: word, role: "output" }] : [];
    });
    await act(async () => {});
    expect([word, said()]).toEqual([word, 1]);
    await press(cavity, "It means something else here");
    expect([word, said()]).toEqual([word, 2]);
    await press(cavity, "It means something else here");
  }
});

test("the row's details say what was taught, list it and forget it", async () => {
  const session = open();
  session.edit("Teach", (draft) => {
    draft.words = [{ printed: "WSP2", role: "output" }];
  });
  const page = await show(session, <PinTable />);
  await send(row(page, "6"), key("Enter"));
  expect(page.textContent).toContain("“WSP2” means an output in this job: you said so.");
  expect(page.textContent).toContain("Words taught in this job (1)");
  await press(page, "Forget what “WSP2” means");
  expect(session.get().job.words).toBeUndefined();
  expect(page.textContent).toContain("What you choose counts in this job for this pin");
});

test("the details of a cavity and of a module's pin ask the same", async () => {
  const session = open();
  session.show({ selection: ["A1:6"] });
  const cavity = await show(session, <CavityDetails />);
  expect(asked(cavity)).not.toBeNull();
  const pin = await show(session, <ModuleEditor part={moduleOf(session.get().job)} />);
  await answer(pin, "output");
  expect(asked(cavity)).toBeNull();
  await press(pin, "Forget it");
  expect(session.get().job.words).toBeUndefined();
});

test("a known word and a number that is the pin's own are not asked about", async () => {
  const session = open();
  for (const mark of ["5", "4"]) {
    const page = await show(session, <CavityDetails cavity={`X1:${mark}`} />);
    expect(page.textContent).not.toContain("mean here?");
  }
});

test("a known word says what it is read as, and can be taught another meaning", async () => {
  const session = open();
  session.edit("Word", (draft) => {
    for (const pin of moduleOf(draft).pins) if (pin.id === "6") pin.printed = "GND";
  });
  session.show({ selection: ["A1:6"] });
  const page = await show(session, <CavityDetails />);
  const table = await show(session, <PinTable />);
  expect(page.textContent).toContain("“GND” is read as a ground.");
  expect(row(table, "6").textContent).toContain("contradicted");
  await press(page, "It means something else here");
  expect(page.textContent).toContain("Go by the maker's legend");
  const label = [...page.querySelectorAll("label")].find(({ textContent }) =>
    textContent?.startsWith("What does “GND” mean here?"),
  );
  const list = document.querySelector<HTMLSelectElement>(`[id="${label?.htmlFor}"]`);
  if (!list) throw new Error("nobody asks");
  await choose(list, "output");
  expect(session.get().job.words).toEqual([{ printed: "GND", role: "output" }]);
  expect(page.textContent).toContain("“GND” means an output in this job: you said so.");
  expect(page.textContent).not.toContain("mean here?");
  expect(row(table, "6").textContent).toContain("agrees");
  await press(page, "Forget it");
  expect(session.get().job.words).toBeUndefined();
  expect(row(table, "6").textContent).toContain("contradicted");
});
