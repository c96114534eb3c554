import { act } from "react";
import { expect, test } from "vitest";
import { CavityDetails } from "../../../src/editor/boards/plug/index.ts";
import { FindingStrip, FindingsPanel } from "../../../src/editor/panels/index.ts";
import { newJob } from "../../../src/job/index.ts";
import { createSession, setPrinted } from "../../../src/session/index.ts";
import { key, press, send, show } from "../support/screen.tsx";
import { click, named, sweeper } from "../support/sweeper.ts";

const messages = (page: HTMLElement) =>
  [...page.querySelectorAll("ol > li")].map((item) => item.textContent ?? "");

test("contradictions come first, each with its word and its message", async () => {
  const page = await show(createSession("findings-1", sweeper()), <FindingsPanel />);
  const list = messages(page);
  expect(list[0]).toMatch(/^contradiction/);
  expect(list.filter((text) => text.includes("and the diagram calls it"))).toHaveLength(4);
  const severities = list.map((text) => text.match(/^[a-z]+/)?.[0].replace(/A1.*/, ""));
  expect(severities.indexOf("warning")).toBeGreaterThan(severities.lastIndexOf("contradiction"));
});

test("choosing a finding selects it by rule and subjects", async () => {
  const session = createSession("findings-2", sweeper());
  const page = await show(session, <FindingsPanel />);
  await send(named(page, "Show path"), click());
  expect(session.get().selection).toEqual(["finding:printed-role-contradicted:A1:1,X1:1"]);
  expect(named(page, "Path shown")).toBeTruthy();
});

test("a filter shows one severity, and again all", async () => {
  const page = await show(createSession("findings-3", sweeper()), <FindingsPanel />);
  const all = messages(page).length;
  const filter = named(page, /^\d+ warnings?$/);
  await send(filter, click());
  expect(messages(page).every((text) => text.startsWith("warning"))).toBe(true);
  await send(filter, click());
  expect(messages(page)).toHaveLength(all);
});

test("what is left keeps its place when a finding goes and when it comes back", async () => {
  const session = createSession("findings-4", sweeper());
  const page = await show(session, <FindingsPanel />);
  const before = messages(page);
  await act(async () => session.edit("Mend", (draft) => setPrinted(draft, "A1:2", "TRIG")));
  const during = messages(page);
  expect(during.length).toBeLessThan(before.length);
  expect(during.filter((text) => before.includes(text))).toEqual(
    before.filter((text) => during.includes(text)),
  );
  await act(async () => session.undo());
  expect(messages(page)).toEqual(before);
});

test("parts that no wire comes to yet are one row that unfolds", async () => {
  const job = sweeper();
  for (let n = 1; n <= 5; n++)
    job.diagram.parts.push({
      kind: "fuse",
      id: `FX${n}`,
      sheet: job.diagram.sheets[0]?.id ?? "",
      at: [0, 0],
      turn: 0,
    });
  const session = createSession("findings-folded", job);
  const page = await show(session, <FindingsPanel />);
  const alone = () => messages(page).filter((text) => text.includes("is wired to nothing."));
  expect(alone()).toEqual([]);
  const row = named(page, /5 parts are wired to nothing yet/);
  expect(row.getAttribute("aria-expanded")).toBe("false");
  await send(row, click());
  expect(alone().filter((text) => !text.includes("5 parts"))).toHaveLength(5);
  await send(named(page, /^warning\s*FX3/), click());
  expect(session.get().selection).toEqual(["finding:loose-end:FX3"]);
});

test("nothing found is no proof: it says what was not looked at", async () => {
  const page = await show(createSession("findings-5", newJob("New", 24)), <FindingsPanel />);
  expect(page.textContent).toContain("Nothing found so far.");
  expect(page.textContent).toContain("no wires are traced yet");
  expect(page.textContent).toContain("no plug is drawn");
  expect(page.textContent).not.toContain("Looked at:");
});

const text = (page: HTMLElement) => (page.textContent ?? "").replace(/\s+/g, " ");

test("a correction is one edit, and its finding goes", async () => {
  const session = createSession("findings-6", sweeper());
  const page = await show(session, <FindingsPanel />);
  await send(named(page, "Adopt ground on the sheet (A1:4)"), click());
  expect(session.get().job.adopted).toEqual([{ pin: "A1:4", role: "ground" }]);
  expect(messages(page).some((one) => one.includes("the diagram calls it OUT"))).toBe(false);
  // The button is gone: the keyboard goes on from the panel.
  expect(document.activeElement?.getAttribute("aria-label")).toBe("Findings");
  await act(async () => session.undo());
  expect(session.get().job).toEqual(sweeper());
});

test("set aside in one tap or in words, listed apart, and brought back", async () => {
  const session = createSession("findings-7", sweeper());
  const page = await show(session, <FindingsPanel />);
  const before = messages(page);
  await press(page, "Set aside");
  await press(page, "Known, repair is ordered");
  expect(messages(page)).toEqual(before.slice(1));
  expect(session.get().job.setAside?.[0]).toMatchObject({ reason: "Known, repair is ordered" });
  expect(session.get().job.setAside?.[0]?.at).toMatch(/^\d{4}-\d\d-\d\dT/);
  expect(text(page)).toContain("Set aside (1)");
  expect(text(page)).toContain("“Known, repair is ordered”");
  await send(named(page, /^Bring back: /), click());
  expect(messages(page)).toEqual(before);
  expect(text(page)).not.toContain("Set aside (1)");
});

test("no reason, no setting aside; Escape leaves it and gives the focus back", async () => {
  const session = createSession("findings-8", sweeper());
  const page = await show(session, <FindingsPanel />);
  await press(page, "Set aside");
  const field = page.querySelector<HTMLInputElement>("form input");
  if (!field) throw new Error("no field");
  expect(document.activeElement).toBe(field);
  await press(page, "Set it aside");
  expect(page.querySelector("[role=alert]")?.textContent).toContain("Write a reason first");
  expect(session.get().job.setAside).toBeUndefined();
  await send(field, key("Escape"));
  expect(page.querySelector("form")).toBeNull();
  expect(document.activeElement?.textContent).toBe("Set aside");
});

test("on changed grounds it is back, and says for what reason it was set aside", async () => {
  const session = createSession("findings-9", sweeper());
  const page = await show(session, <FindingsPanel />);
  await press(page, "Set aside");
  await press(page, "Built so by the manufacturer");
  await act(async () => session.edit("Retype", (draft) => setPrinted(draft, "A1:1", "EARTH")));
  const back = messages(page).find((one) => one.includes("the diagram calls it EARTH"));
  expect(back).toContain("Set aside before: “Built so by the manufacturer”.");
  expect(text(page)).not.toContain("Set aside (1)");
});

test("a cavity's own details offer what its findings do", async () => {
  const session = createSession("findings-10", sweeper());
  session.show({ selection: ["X1:4"] });
  const page = await show(session, <CavityDetails />);
  await send(named(page, "Adopt ground on the sheet (A1:4)"), click());
  expect(session.get().job.adopted).toEqual([{ pin: "A1:4", role: "ground" }]);
  expect(text(page)).not.toContain("Adopt ground");
});

test("under a phone's diagram the finding shown is told, with the way back to the others", async () => {
  const session = createSession("findings-strip", sweeper());
  session.show({ station: "diagram" });
  const finding = {
    rule: "dead-short",
    severity: "contradiction",
    subjects: ["F1", "W2"],
    message: "A short, for one.",
  } as const;
  const page = await show(session, <FindingStrip finding={finding} />);
  expect(page.textContent).toMatch(/contradiction.*F1, W2.*A short, for one\./);
  await send(named(page, "Back to the findings"), click());
  expect(session.get().station).toBe("check");
});
