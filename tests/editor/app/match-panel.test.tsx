import { act } from "react";
import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { MatchPanel } from "../../../src/editor/app/match/match-panel.tsx";
import type { Job } from "../../../src/job/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { smallJob } from "../../session/support/small-job.ts";
import { pluggedBigJob } from "../../support/plugged-big-job.ts";
import { choose, key, press, send, show, type } from "../support/screen.tsx";

async function matching(job: Job) {
  // What the browser measures a floating list by is of no use here.
  globalThis.ResizeObserver ??= class {
    observe() {}
    unobserve() {}
    disconnect() {}
  };
  const session = createSession("one", job);
  const page = await show(
    session,
    <TipProvider>
      <MatchPanel />
    </TipProvider>,
  );
  /** Of what is sought in the list that is open: what each one says. */
  const found = () =>
    [...document.querySelectorAll("[role=option]")].map((one) =>
      [...one.querySelectorAll("span")].map((part) => part.textContent).join(", "),
    );
  const seek = async (text: string) => {
    const field = document.querySelector<HTMLInputElement>("[role=combobox]");
    if (!field) throw new Error("no list is open");
    if (text !== "") await type(field, text);
    return field;
  };
  return { session, page, found, seek };
}

/** The job of the tests of matching with a second module, a second plug and a cavity that is blocked. */
function twoOfEach(): Job {
  const job = smallJob();
  const [plug] = job.plugs;
  const module = job.diagram.parts.find((part) => part.kind === "module");
  if (!plug || module?.kind !== "module") throw new Error("the small job has a plug and a module");
  job.diagram.parts.push({ ...module, id: "A2", label: "Pump", pins: [{ id: "1" }, { id: "2" }] });
  const [one, two] = plug.cavities;
  if (!one || !two) throw new Error("the plug has cavities");
  job.plugs.push({ ...plug, id: "X2", name: "", cavities: [one, { ...two, blocked: true }] });
  return job;
}

test("a pin's cavities are made when they are asked for, the taken ones told", async () => {
  const { session, page, found } = await matching(smallJob());
  expect(document.querySelectorAll("option, [role=option]")).toHaveLength(0);
  await press(page, "Cavity of pin A1:3: none. Choose another");
  expect(found()).toEqual(["1, now pin A1:1", "2, now pin A1:2", "3", "4, empty"]);
  const third = document.querySelectorAll<HTMLElement>("[role=option]")[2];
  await act(async () => third?.click());
  expect(session.get().job.links).toContainEqual({ pin: "A1:3", cavity: "X1:3" });
  expect(document.querySelectorAll("[role=option]")).toHaveLength(0);
  expect(page.textContent).not.toContain("Left over");
  await press(page, "Untie A1:3");
  expect(session.get().job.links).toHaveLength(2);
  expect(page.textContent).toContain("Left over on the plugcavity 3");
});

test("Enter ties what was sought or marked by the arrows, and before that nothing", async () => {
  const { session, page, seek } = await matching(smallJob());
  const before = session.get().job;
  await press(page, "Cavity of pin A1:3: none. Choose another");
  await send(await seek(""), key("Enter"));
  expect(session.get().job).toBe(before);
  await send(await seek(""), key("ArrowDown"));
  await send(await seek(""), key("ArrowDown"));
  await send(await seek(""), key("ArrowDown"));
  await send(await seek(""), key("Enter"));
  expect(session.get().job.links.at(-1)).toEqual({ pin: "A1:3", cavity: "X1:3" });
  await press(page, "Cavity of pin A1:3: 3. Choose another");
  await send(await seek("4"), key("Enter"));
  expect(session.get().job.links.at(-1)).toEqual({ pin: "A1:3", cavity: "X1:4" });
});

test("of several plugs the one at hand comes first, and a blocked cavity takes nothing", async () => {
  const { session, page, found, seek } = await matching(twoOfEach());
  await choose(page.querySelector("select") as HTMLSelectElement, "X2");
  await press(page, "Cavity of pin A1:3: none. Choose another");
  expect(found().slice(0, 3)).toEqual(["X2:1", "X2:2, blocked", "X1:1, now pin A1:1"]);
  const before = session.get().job;
  await send(await seek("x2:2"), key("Enter"));
  expect(session.get().job).toBe(before);
  // The very name of a cavity goes before those that only begin with it.
  await send(await seek("X2:1"), key("Enter"));
  expect(session.get().job.links.at(-1)).toEqual({ pin: "A1:3", cavity: "X2:1" });
});

test("one module at a time, with its plug, and it stays at hand until another one is named", async () => {
  const job = twoOfEach();
  job.links.push({ pin: "A2:1", cavity: "X2:1" });
  const { session, page, found, seek } = await matching(job);
  const pins = () =>
    [...page.querySelectorAll("tbody [aria-label^=Untie]")].map((one) =>
      one.getAttribute("aria-label"),
    );
  expect(pins()).toEqual(["Untie A1:1", "Untie A1:2", "Untie A1:3"]);
  await press(page, "Module at hand: A1 · Beacon timer. Choose another");
  expect(found()).toEqual(["A1 · Beacon timer, 2 of 3 tied", "A2 · Pump, 1 of 2 tied"]);
  await send(await seek("pump"), key("Enter"));
  expect(pins()).toEqual(["Untie A2:1", "Untie A2:2"]);
  expect(session.get().plug).toBe("X2");
  await act(async () => session.show({ selection: ["X1:3"] }));
  expect(pins()).toEqual(["Untie A2:1", "Untie A2:2"]);
  await act(async () => session.show({ selection: ["X1:1"] }));
  expect(pins()).toEqual(["Untie A1:1", "Untie A1:2", "Untie A1:3"]);
});

test("what is left over on other plugs is told by number, and leads there", async () => {
  const { session, page } = await matching(twoOfEach());
  expect(page.querySelector("details")?.textContent).toBe("1 cavity on another plug");
  await act(async () => {
    const details = page.querySelector("details") as HTMLDetailsElement;
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
  });
  const other = page.querySelector<HTMLElement>("details button");
  expect(other?.textContent).toContain("cavity 1");
  await act(async () => other?.click());
  expect(session.get().plug).toBe("X2");
});

test("a large job is no more to show than the module at hand", async () => {
  const { page } = await matching(pluggedBigJob(2000, 10, 0));
  expect(page.querySelectorAll("tbody tr").length).toBeLessThan(30);
  expect(page.querySelectorAll("*").length).toBeLessThan(600);
});
