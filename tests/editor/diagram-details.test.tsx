import { act } from "react";
import { expect, test } from "vitest";
import { TipProvider } from "../../src/editor/app/controls/index.ts";
import { PinChoice } from "../../src/editor/boards/diagram/details/pin-pick.tsx";
import { DiagramList, PartDetails } from "../../src/editor/boards/diagram/index.ts";
import type { PartOf } from "../../src/job/index.ts";
import { createSession, type Session } from "../../src/session/index.ts";
import { drawing, found } from "../session/diagram/drawing.ts";
import { choose, commit, key, send, show } from "./support/screen.tsx";

function opened(...selection: string[]): Session {
  const session = createSession(
    "k",
    drawing(
      [
        { id: "F1", kind: "fuse", at: [0, 0] },
        {
          id: "S1",
          kind: "switch",
          at: [0, 200],
          positions: ["off", "on"],
          contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
          control: "operator",
        },
        { id: "A1", kind: "module", at: [400, 0], pins: [{ id: "1" }, { id: "2" }] },
      ],
      [{ id: "W1", from: "F1:2", to: "A1:1" }],
    ),
  );
  session.show({ selection, sheet: "s1" });
  return session;
}

const details = (session: Session) =>
  show(
    session,
    <TipProvider>
      <PartDetails />
    </TipProvider>,
  );

/** The field with this label or this accessible name. */
function field<T extends HTMLElement = HTMLInputElement>(page: HTMLElement, name: string): T {
  const labels = [...page.querySelectorAll("label")];
  const label = labels.find((one) => one.textContent?.trim() === name);
  const target =
    page.querySelector(`[aria-label="${name}"]`) ??
    (label?.htmlFor ? document.getElementById(label.htmlFor) : label?.firstChild);
  if (!target) throw new Error(`no field ${name}`);
  return target as T;
}

test("a number is taken as it is typed, comma, unit and all, as one edit", async () => {
  const session = opened("F1");
  await commit(field(await details(session), "Rating"), "7,5 A");
  expect(found(session.get().job.diagram.parts, "F1")).toMatchObject({ amps: 7.5 });
  expect(session.get().history.done).toHaveLength(1);
});

test("what is no number is told and changes nothing", async () => {
  const session = opened("F1");
  const page = await details(session);
  await commit(field(page, "Rating"), "ten");
  expect(page.querySelector('[role="alert"]')?.textContent).toMatch(/no number/);
  expect(session.get().history.done).toEqual([]);
});

test("a new id goes through to the wires and stays chosen", async () => {
  const session = opened("F1");
  await commit(field(await details(session), "Id"), "F20");
  expect(session.get().job.diagram.wires[0]?.from).toBe("F20:2");
  expect(session.get().selection).toEqual(["F20"]);
});

test("an id in use is refused with the reason", async () => {
  const session = opened("F1");
  const page = await details(session);
  await commit(field(page, "Id"), "A1");
  expect(page.querySelector('[role="alert"]')?.textContent).toMatch(/in use/);
  expect(session.get().history.done).toEqual([]);
});

/** Types what is refused, then leaves the field once more with what the document has. */
async function refusedThenTakenBack(page: HTMLElement, name: string, refused: string) {
  const input = field(page, name);
  const before = input.value;
  const isMarked = () => field(page, name).getAttribute("aria-invalid") === "true";
  for (const backBy of ["Escape", "typing"]) {
    await commit(input, refused);
    expect([backBy, isMarked()]).toEqual([backBy, true]);
    if (backBy === "typing") await commit(input, before);
    else {
      await act(async () => input.focus());
      await send(input, key("Escape"));
    }
    expect([backBy, isMarked(), input.value]).toEqual([backBy, false, before]);
    expect(page.querySelector('[role="alert"]')).toBeNull();
  }
}

test("a refused id or number is no longer marked wrong once the old one is back", async () => {
  const session = opened("F1");
  const page = await details(session);
  await refusedThenTakenBack(page, "Id", "A1");
  await refusedThenTakenBack(page, "Rating", "ten");
  expect(session.get().history.done).toEqual([]);
});

test("nor is a refused pin, typed where there are too many to list", async () => {
  const pins = Array.from({ length: 401 }, (_, at) => ({ value: `A1:${at}`, text: `A1:${at}` }));
  const picked: string[] = [];
  const page = await show(
    opened(),
    <PinChoice label="From" value="A1:7" options={pins} onChange={(ref) => picked.push(ref)} />,
  );
  await refusedThenTakenBack(page, "From", "A1:900");
  expect(picked).toEqual([]);
});

test("printed words are typed one after another: Enter goes down, and adds a pin after the last", async () => {
  const session = opened("A1");
  const page = await details(session);
  await commit(field(page, "Printed word of pin 1"), "GND");
  expect(document.activeElement).toBe(field(page, "Printed word of pin 2"));
  await commit(field(page, "Printed word of pin 2"), "IGN");
  const { pins } = found(session.get().job.diagram.parts, "A1") as PartOf<"module">;
  expect(pins.map((pin) => [pin.id, pin.printed])).toEqual([
    ["1", "GND"],
    ["2", "IGN"],
    ["3", undefined],
  ]);
  expect(document.activeElement).toBe(field(page, "Printed word of pin 3"));
});

test("a pin's mark is changed on the wire too", async () => {
  const session = opened("A1:1");
  await commit(field(await details(session), "Mark of pin 1"), "C");
  expect(session.get().job.diagram.wires[0]?.to).toBe("A1:C");
});

test("a contact is closed in the positions that are ticked", async () => {
  const session = opened("S1");
  const page = await details(session);
  const closed = page.querySelector("fieldset");
  const off = [...(closed?.querySelectorAll("label") ?? [])].find((one) =>
    one.textContent?.includes("off"),
  );
  await act(async () => off?.querySelector("input")?.click());
  const part = found(session.get().job.diagram.parts, "S1") as PartOf<"switch">;
  expect(part.contacts[0]?.closedIn.toSorted()).toEqual(["off", "on"]);
});

test("a wire's number and colour are typed, and a wrong colour is told", async () => {
  const session = opened("W1");
  const page = await details(session);
  await commit(field(page, "Printed number"), "31-5");
  await commit(field(page, "or type it"), "bnbk");
  expect(session.get().job.diagram.wires[0]).toMatchObject({
    number: "31-5",
    colour: { base: "BN", tracer: "BK" },
  });
  await commit(field(page, "or type it"), "mauve");
  expect(page.querySelector('[role="alert"]')?.textContent).toMatch(/no colour code/);
});

test("without a pointer a part is added and a wire is laid from pin to pin, or to where it goes on", async () => {
  const session = opened();
  const page = await show(
    session,
    <TipProvider>
      <DiagramList />
    </TipProvider>,
  );
  const [addPart, addWire] = page.querySelectorAll("form");
  await choose(field<HTMLSelectElement>(page, "Part"), "lamp");
  await act(async () => addPart?.requestSubmit());
  expect(session.get().job.diagram.parts.at(-1)).toMatchObject({ kind: "lamp", sheet: "s1" });

  await choose(field<HTMLSelectElement>(page, "Wire from"), "S1:2");
  await choose(field<HTMLSelectElement>(page, "to"), "A1:2");
  await act(async () => addWire?.requestSubmit());
  expect(session.get().job.diagram.wires.at(-1)).toMatchObject({ from: "S1:2", to: "A1:2" });

  await choose(field<HTMLSelectElement>(page, "Wire from"), "S1:1");
  await choose(field<HTMLSelectElement>(page, "to"), "goes on");
  await act(async () => addWire?.requestSubmit());
  const end = session.get().job.diagram.parts.at(-1);
  expect(end?.kind).toBe("offpage");
  expect(session.get().job.diagram.wires.at(-1)?.to).toBe(`${end?.id}:1`);
});
