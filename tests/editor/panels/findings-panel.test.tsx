import { act } from "react";
import { expect, test } from "vitest";
import { FindingsPanel } from "../../../src/editor/panels/index.ts";
import { newJob } from "../../../src/job/index.ts";
import { createSession, setPrinted } from "../../../src/session/index.ts";
import { send, show } from "../support/screen.tsx";
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

test("nothing found is no proof: it says what was not looked at", async () => {
  const page = await show(createSession("findings-5", newJob("New", 24)), <FindingsPanel />);
  expect(page.textContent).toContain("Nothing found so far.");
  expect(page.textContent).toContain("no wires are traced yet");
  expect(page.textContent).toContain("no plug is drawn");
  expect(page.textContent).not.toContain("Looked at:");
});
