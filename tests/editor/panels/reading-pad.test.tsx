import { act } from "react";
import { beforeEach, expect, test, vi } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { useReadingStation } from "../../../src/editor/app/use-reading-station.ts";
import { ReadingPad, ReadingsList } from "../../../src/editor/panels/index.ts";
import { createSession, newDraft, placeProbe } from "../../../src/session/index.ts";
import { send, show, type } from "../support/screen.tsx";
import { click, named, sweeper } from "../support/sweeper.ts";

beforeEach(() => localStorage.clear());

/** What the desk has at all times, whatever screen is up. */
function Station() {
  useReadingStation(() => {}, false);
  return null;
}

async function pad(job = "pad") {
  const session = createSession(job, sweeper());
  const page = await show(
    session,
    <TipProvider>
      <Station />
      <ReadingPad />
      <ReadingsList />
    </TipProvider>,
  );
  const press = (name: string | RegExp) => send(named(page, name), click());
  const readings = () => session.get().job.machines[0]?.readings ?? [];
  return { session, page, press, readings };
}

const begin = { ...newDraft("X1:4"), when: { unplugged: ["A1"] } };

test("keys, echo and one edit: a reading goes from thumb to job", async () => {
  const { session, page, press, readings } = await pad();
  const before = readings().length;
  await act(async () => session.show({ draft: { ...begin, quantity: "ohms" } }));
  for (const key of ["4", "Thousands", "7"]) await press(key);
  expect(page.querySelector("output")?.textContent).toBe("4.70 kΩ");
  await act(async () => page.querySelector("form")?.requestSubmit());
  const kept = readings().at(-1);
  expect(readings()).toHaveLength(before + 1);
  expect(kept).toMatchObject({
    id: `R${before + 1}`,
    quantity: "ohms",
    red: "X1:4",
    black: "chassis",
    value: 4700,
    when: { unplugged: ["A1"] },
  });
  expect(kept?.at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
  expect(session.get().history.done).toHaveLength(1);
  expect(session.get().draft).toBeNull();
  expect(session.get().selection).toEqual([kept?.id]);
});

test("what it should show stays hidden until there is a value or somebody asks", async () => {
  const { session, page, press } = await pad();
  await act(async () => session.show({ draft: begin }));
  expect(page.textContent).not.toContain("A healthy machine shows");
  await press("What should it show?");
  expect(page.textContent).toContain("A healthy machine shows");
});

test("a method that is wrong there says so at once, and can still be kept", async () => {
  const { session, page, readings } = await pad();
  const live = {
    ...newDraft("X1:1"),
    quantity: "ohms" as const,
    when: { switches: { S1: "run" } },
  };
  await act(async () => session.show({ draft: live }));
  expect(page.textContent).toContain("Not a valid reading.");
  const before = readings().length;
  await act(async () => session.show({ draft: { ...live, value: "12" } }));
  await act(async () => page.querySelector("form")?.requestSubmit());
  expect(readings()).toHaveLength(before + 1);
  expect(page.querySelector("ol")?.textContent).toContain("not a valid reading");
});

test("the button says what is missing and keeps nothing until it is there", async () => {
  const { session, page, readings } = await pad();
  const before = readings().length;
  await act(async () => session.show({ draft: newDraft() }));
  const keep = page.querySelector<HTMLButtonElement>('button[type="submit"]');
  expect(keep?.textContent).toBe("Tap where the red lead goes.");
  expect(keep?.disabled).toBe(true);
  await act(async () => page.querySelector("form")?.requestSubmit());
  expect(readings()).toHaveLength(before);
});

test("closing loses nothing: what was typed is offered again", async () => {
  const { session, page, press } = await pad();
  await act(async () => session.show({ draft: begin }));
  await press("7");
  await press("Close the pad");
  expect(session.get().draft).toBeNull();
  expect(page.textContent).toContain("7 volts at cavity 4");
  await press("Go on");
  expect(session.get().draft).toMatchObject({ value: "7", red: "X1:4" });
});

test("a killed tab loses nothing either", async () => {
  const first = await pad("killed");
  await act(async () => first.session.show({ draft: begin }));
  await first.press("9");
  const second = await pad("killed");
  expect(second.page.textContent).toContain("9 volts at cavity 4");
});

test("switches and plugs are stored only when they are not at rest", async () => {
  const { session, page, press } = await pad();
  await act(async () => session.show({ draft: newDraft("X1:1") }));
  const radio = [...page.querySelectorAll("label")].find((one) => one.textContent === "run");
  const input = radio?.querySelector("input");
  if (!input) throw new Error("no position run");
  await send(input, click());
  expect(session.get().draft?.when.switches).toEqual({ S1: "run" });
  await press(/^A1 /);
  expect(session.get().draft?.when.unplugged).toEqual(["A1"]);
  await press(/^A1 /);
  expect(session.get().draft?.when.unplugged).toEqual([]);
});

test("cautions of the step stand beside it, and who comes first", async () => {
  const { session, page } = await pad();
  await act(async () => session.show({ draft: { ...begin, with: "test-lamp" } }));
  const cautions = page.querySelector('[aria-label="Cautions"]')?.textContent ?? "";
  expect(cautions).toContain("A test lamp is a load");
  expect(cautions).toContain("wait for the module to shut down");
  expect(cautions).toContain("a qualified person come first");
});

test("what will move is told before the reading is taken", async () => {
  const { session, page } = await pad();
  const start = { ...newDraft("X1:1"), when: { switches: { S1: "start" }, unplugged: ["A1"] } };
  await act(async () => session.show({ draft: start }));
  expect(page.textContent).toMatch(/This state will move or bring on: [^.]*relay K1[^.]*motor M2/);
  await act(async () => session.show({ draft: begin }));
  expect(page.textContent).toContain("As drawn, nothing moves or comes on.");
  const lamp = { ...newDraft("X1:3"), black: "battery+", when: begin.when };
  await act(async () => session.show({ draft: { ...lamp, with: "test-lamp" as const } }));
  expect(page.textContent).toMatch(/The test lamp will move or bring on: [^.]*relay K2/);
  expect(page.textContent).toContain("nobody within reach");
  // Of a module without a stated behaviour nobody knows what it does while it is plugged in.
  await act(async () => {
    session.edit("Forget the behaviour", (job) => {
      for (const part of job.diagram.parts) if (part.kind === "module") delete part.behaviour;
    });
    session.show({ draft: newDraft("X1:1") });
  });
  expect(page.textContent).toContain("What A1 drives is not known");
});

test("a reading is mended in its place, repeated as a new one, and deleted", async () => {
  const { session, page, press, readings } = await pad();
  const [first] = readings();
  if (!first) throw new Error("the demo has readings");
  const count = readings().length;
  await press(`Mend reading ${first.id}`);
  const value = page.querySelector<HTMLInputElement>('input[aria-label^="Value in"]');
  if (!value) throw new Error("no value");
  expect(value.value).toBe(String(first.value));
  await type(value, "23,9");
  await act(async () => page.querySelector("form")?.requestSubmit());
  expect(readings()[0]).toMatchObject({ id: first.id, value: 23.9, at: first.at });
  expect(readings()).toHaveLength(count);

  await press(`Take reading ${first.id} again`);
  expect(session.get().draft).toMatchObject({ value: "", red: first.red });
  expect(session.get().draft?.mends).toBeUndefined();
  await press("Close the pad");

  await press(`Delete reading ${first.id}`);
  expect(readings().some((one) => one.id === first.id)).toBe(false);
  expect(session.get().history.done.at(-1)?.label).toBe(`Delete reading ${first.id}`);
});

test("a lead that is tapped is the one that the next place goes to, also when it was so already", async () => {
  const { session, press } = await pad();
  await act(async () => session.show({ draft: newDraft() }));
  await press(/^red lead/);
  expect(session.get().draft?.asks).toBe("red");
  await press(/^black lead/);
  await press(/^black lead/);
  expect(session.get().draft?.asks).toBe("black");
});

test("a place picked for one lead leaves the other one asked for", async () => {
  const { session, page, press } = await pad();
  await act(async () => session.show({ draft: newDraft() }));
  await press("Pick the black lead’s place from a list");
  const place = [
    ...document.querySelectorAll<HTMLElement>('[role=listbox][aria-label="Places"] button'),
  ][3];
  if (!place) throw new Error("no places");
  await send(place, click());
  expect(session.get().draft?.black).not.toBe("chassis");
  expect(session.get().draft?.asks).toBe("red");
  expect(page.querySelector('button[type="submit"]')?.textContent).toBe(
    "Tap where the red lead goes.",
  );
});

test("a board's tap that places the last lead leads on to the value", async () => {
  const { session, page } = await pad();
  await act(async () => session.show({ draft: newDraft() }));
  const field = page.querySelector('input[aria-label^="Value in"]');
  expect(document.activeElement).not.toBe(field);
  await act(async () => session.show({ draft: placeProbe(newDraft(), "X1:2") }));
  expect(document.activeElement).toBe(field);
});

test("by touch the value's field is left alone", async () => {
  const { session, page } = await pad();
  vi.stubGlobal("matchMedia", (media: string) => ({ media, matches: /coarse/.test(media) }));
  await act(async () => session.show({ draft: newDraft() }));
  await act(async () => session.show({ draft: placeProbe(newDraft(), "X1:2") }));
  expect(document.activeElement).not.toBe(page.querySelector('input[aria-label^="Value in"]'));
});

test("a reading begun on one machine stays with it when another is taken to hand", async () => {
  const { session, page, press, readings } = await pad("machines");
  const first = session.get().machine;
  const other = { id: "other", name: "Other one", wires: [], readings: [], trials: [] };
  await act(async () => session.edit("Add it", (job) => void job.machines.push(other)));
  await act(async () => session.show({ draft: begin }));
  await press("7");
  await act(async () => session.show({ machine: "other" }));
  expect(session.get().draft).toBeNull();
  const name = session.get().job.machines[0]?.name;
  expect(page.textContent).toContain(`7 volts at cavity 4`);
  expect(page.textContent).toContain(`, on ${name}`);

  await press("Go on");
  expect(session.get()).toMatchObject({ machine: first, draft: { value: "7", red: "X1:4" } });
  const before = readings().length;
  await act(async () => page.querySelector("form")?.requestSubmit());
  expect(readings()).toHaveLength(before + 1);
  expect(session.get().job.machines[1]?.readings).toEqual([]);
});

test("so does one whose machine goes by undo, and it is not offered for another", async () => {
  const { session, page } = await pad("undone");
  const other = { id: "other", name: "Other one", wires: [], readings: [], trials: [] };
  await act(async () => session.edit("Add it", (job) => void job.machines.push(other)));
  await act(async () => session.show({ machine: "other" }));
  await act(async () => session.show({ draft: { ...begin, value: "9" } }));
  await act(async () => session.undo());
  expect(session.get().draft).toBeNull();
  expect(page.textContent).toContain("on a machine that was taken out of the job");
  expect(() => named(page, "Go on")).toThrow();
});
