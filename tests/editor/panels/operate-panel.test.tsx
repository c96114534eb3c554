import { act } from "react";
import { expect, onTestFinished, test } from "vitest";
import { createPlay } from "../../../src/circuit/index.ts";
import { OperatePanel } from "../../../src/editor/panels/index.ts";
import type { Job } from "../../../src/job/index.ts";
import {
  createSession,
  keepOperating,
  portOf,
  recordingsOf,
  type Session,
  startOperating,
} from "../../../src/session/index.ts";
import { send, show, type } from "../support/screen.tsx";
import { click, named, sweeper } from "../support/sweeper.ts";

const settled = () => act(() => new Promise<void>((done) => setTimeout(done, 0)));

async function operating(job: Job = sweeper()): Promise<{ session: Session; page: HTMLElement }> {
  const session = createSession("operate", job);
  const stop = keepOperating(
    session,
    (played, machine) => portOf(() => createPlay(played, machine)),
    { now: () => 0, wait: () => new Promise(() => {}) },
  );
  onTestFinished(stop);
  startOperating(session);
  const page = await show(session, <OperatePanel />);
  await settled();
  return { session, page };
}

const choose = async (page: HTMLElement, legend: string, position: string) => {
  const group = [...page.querySelectorAll("fieldset")].find(
    (one) => one.querySelector("legend")?.textContent === legend,
  );
  const label = [...(group?.querySelectorAll("label") ?? [])].find(
    (one) => one.textContent === position,
  );
  const radio = label?.querySelector("input");
  if (!radio) throw new Error(`no ${position} of ${legend}`);
  await act(async () => radio.click());
  await settled();
};

const tab = async (page: HTMLElement, name: string) => {
  await send(named(page, name), click());
};

/** The line of a part among the controls. */
const line = (page: HTMLElement, id: string) =>
  [...page.querySelectorAll("strong")].find((one) => one.textContent === id)?.closest("div")
    ?.textContent ?? "";

const news = (page: HTMLElement) => page.querySelector('[role="status"]')?.textContent ?? "";

test("says that this is the drawing and not the machine", async () => {
  const { page } = await operating();
  expect(page.textContent).toContain("This is the drawing, not the machine");
});

test("a switch turned in the list works the circuit, and what happens is read out", async () => {
  const { page } = await operating();
  expect(line(page, "E1")).toContain("dark");
  await choose(page, "S1 key switch", "run");
  expect(line(page, "E1")).toContain("lit");
  expect(news(page)).toContain("S1 to run");
  expect(news(page)).toContain("E1 control panel light: lit");
});

test("a spring position is held until it is let go", async () => {
  const { page, session } = await operating();
  await choose(page, "S1 key switch", "run");
  await choose(page, "S2 pump button, cab", "hold pressed");
  expect(session.get().operate.live?.when.switches?.S2).toBe("pressed");
  await send(named(page, "Let go of S2"), click());
  await settled();
  expect(session.get().operate.live?.when.switches?.S2).toBeUndefined();
  expect(line(page, "K2")).toContain("pulled in");
});

test("a fuse is pulled and put back by buttons that say so", async () => {
  const { page } = await operating();
  await choose(page, "S1 key switch", "run");
  await send(named(page, "Pull F3"), click());
  await settled();
  expect(line(page, "A1")).toContain("not powered");
  await send(named(page, "Put F3 back"), click());
  await settled();
  expect(line(page, "A1")).not.toContain("not powered");
});

test("a fuse that blows says what drew the current, and is replaced", async () => {
  const job = sweeper();
  for (const part of job.diagram.parts) if (part.kind === "fuse" && part.id === "F4") part.amps = 1;
  const { page } = await operating(job);
  await choose(page, "S1 key switch", "run");
  await choose(page, "S2 pump button, cab", "hold pressed");
  expect(line(page, "F4")).toContain("blown");
  await tab(page, "Steps");
  expect(page.textContent).toMatch(/F4 blows at [\d.]+ A, drawn by M1/);
  await tab(page, "Controls");
  expect(named(page, "Replace F4")).toBeTruthy();
  // It is told until a new one is fitted, whatever else is done.
  const alert = () => page.querySelector('[role="alert"]')?.textContent ?? "";
  expect(alert()).toMatch(/F4.* blew at [\d.]+ A, drawn by M1/);
  await send(named(page, "Let go of S2"), click());
  await settled();
  expect(alert()).toContain("F4");
  await choose(page, "S1 key switch", "off");
  await send(named(page, "Fit a new F4"), click());
  await settled();
  expect(alert()).toBe("");
});

test("steps that gave way to others are brought back at one touch", async () => {
  const { page, session } = await operating();
  await choose(page, "S1 key switch", "run");
  await send(named(page, "Start over"), click());
  await settled();
  expect(line(page, "E1")).toContain("dark");
  await send(named(page, "Bring back the steps"), click());
  await settled();
  expect(line(page, "E1")).toContain("lit");
  expect(session.get().operate.setAside).toEqual([]);
});

test("steps are kept under a name, as one undo step", async () => {
  const { page, session } = await operating();
  await choose(page, "S1 key switch", "run");
  await tab(page, "Steps");
  expect(page.querySelector("ol")?.textContent).toContain("S1 to run");
  const field = page.querySelector<HTMLInputElement>('input[aria-label="Name of these steps"]');
  if (!field) throw new Error("no field");
  await type(field, "Key on");
  await act(async () => field.form?.requestSubmit());
  expect(recordingsOf(session.get().job, session.get().machine).at(-1)).toMatchObject({
    name: "Key on",
    steps: [{ do: "turn", switch: "S1", position: "run" }],
  });
  expect(session.get().history.done).toHaveLength(1);
});

test("a recording whose part is gone says which step is not done, and why", async () => {
  const job = sweeper();
  Object.assign(job.machines[0] ?? {}, {
    recordings: [
      {
        id: "recording1",
        name: "Old",
        steps: [
          { do: "turn", switch: "S7", position: "on" },
          { do: "turn", switch: "S1", position: "run" },
        ],
      },
    ],
  });
  const { page } = await operating(job);
  await tab(page, "Steps");
  await send(named(page, "Replay Old"), click());
  await settled();
  await send(named(page, "Next step"), click());
  await settled();
  expect(page.querySelector('[aria-label="Replay of Old"]')?.textContent).toMatch(
    /S7 to on.*Not done\. S7/,
  );
  await send(named(page, "Next step"), click());
  await settled();
  await tab(page, "Controls");
  expect(line(page, "E1")).toContain("lit");
});

test("an unsaid module is told as a doubt, never as a firm answer", async () => {
  const job = sweeper();
  for (const part of job.diagram.parts) if (part.kind === "module") delete part.behaviour;
  const { page, session } = await operating(job);
  expect(session.get().operate.live?.doubts.length).toBeGreaterThan(0);
  expect(page.textContent).toMatch(/not known/);
});
