import { expect, test } from "vitest";
import type { Finding } from "../../src/check/index.ts";
import { newJob, ROLE_NAMES } from "../../src/job/index.ts";
import { NOT_BEGUN, nextStation, stationsOf } from "../../src/session/index.ts";
import { checked, role, smallJob } from "./support/small-job.ts";

const states = (stations: ReturnType<typeof stationsOf>) =>
  Object.fromEntries(stations.map((station) => [station.id, station.state]));

test("an empty job lacks everything and points at the picture", () => {
  const stations = stationsOf(newJob("New job", 24), checked([]));
  expect(new Set(stations.map((station) => station.state))).toEqual(new Set(["lacking"]));
  expect(nextStation(stations)).toMatchObject({
    id: "diagram",
    next: "Bring in a picture of the diagram",
  });
});

test("with a picture the first station names the scan desk, and is not done while parts have no wire", () => {
  const job = smallJob();
  const diagram = (of: typeof job, findings: Finding[] = [], scan = NOT_BEGUN) =>
    stationsOf(of, checked([], findings), scan).find(({ id }) => id === "diagram");
  const { parts } = job.diagram;
  const sheets = job.diagram.sheets.map((sheet) => ({
    ...sheet,
    image: { file: "images/page.png", width: 800, height: 600 },
  }));
  const pictured = { ...job, diagram: { ...job.diagram, sheets } };
  const withOnly = (parts: typeof job.diagram.parts) => ({
    ...pictured,
    diagram: { ...pictured.diagram, parts, wires: [] },
  });
  const offered = { ...NOT_BEGUN, isSquaringOffered: true };
  expect(diagram(withOnly([]), [], offered)?.next).toBe("Square up the picture");
  expect(diagram(withOnly([]))?.next).toBe("Scan desk: find its parts");
  const wordless = parts.map(({ label: _, ...part }) =>
    part.kind === "module"
      ? { ...part, pins: part.pins.map(({ printed: __, ...pin }) => pin) }
      : part,
  );
  expect(diagram(withOnly(wordless as typeof parts))?.next).toBe("Scan desk: read its words");
  expect(diagram(withOnly(parts))?.next).toBe("Scan desk: trace its lines");
  const loose = { rule: "loose-end", severity: "warning", message: "" } as const;
  const lone = { ...loose, subjects: ["F1"] };
  expect(diagram(pictured, [lone, { ...loose, subjects: ["F2:1", "F2"] }])).toMatchObject({
    state: "started",
    next: "1 part lacks wires",
  });
  expect(diagram(pictured, [{ ...lone, setAside: "spare" }])?.state).toBe("done");
});

test("a traced and drawn job points at the first pin without a cavity", () => {
  const stations = stationsOf(smallJob(), checked([role("A1:1")]));
  expect(states(stations)).toMatchObject({ diagram: "done", plug: "done", match: "started" });
  expect(nextStation(stations)).toMatchObject({
    id: "match",
    has: "2 of 3 pins tied",
    next: "Tie pin A1:3",
  });
});

test("an empty cavity is not left over", () => {
  const job = smallJob();
  job.links.push({ pin: "A1:3", cavity: "X1:3" });
  const match = stationsOf(job, checked([])).find((station) => station.id === "match");
  expect(match).toMatchObject({ state: "done", has: "3 of 3 pins tied", next: null });
});

test("contradictions are counted and keep the check open", () => {
  const finding = {
    rule: "dead-short",
    severity: "contradiction",
    subjects: ["F1"],
    message: "",
  } as const;
  const check = stationsOf(smallJob(), checked([role("A1:1")], [finding])).find(
    (station) => station.id === "check",
  );
  expect(check).toMatchObject({ state: "started", has: "1 contradiction" });
});

test("the next reading is at the contradicted cavity before the undecided one", () => {
  const roles = [
    role("A1:1", { cavity: "X1:1", verdict: "undecided" }),
    role("A1:2", { cavity: "X1:2", verdict: "contradicted" }),
  ];
  const prove = stationsOf(smallJob(), checked(roles)).find((station) => station.id === "prove");
  expect(prove?.next).toBe("Measure at X1:2");
});

test("once the meter has spoken everywhere nothing is left to prove", () => {
  const roles = [role("A1:1", { cavity: "X1:1", meterVerdict: "agrees" })];
  const prove = stationsOf(smallJob(), checked(roles)).find((station) => station.id === "prove");
  expect(prove).toMatchObject({ state: "done", next: null });
});

test("hundreds of plugs still leave the sheet's station its one line", () => {
  const job = newJob("Whole machine", 24);
  for (let n = 1; n <= 260; n++) job.links.push({ pin: `A${n}:1`, cavity: `X${n}:1` });
  const tied = { ...role("A1:1"), cavity: "X1:1" };
  const sheet = stationsOf(job, checked([tied])).find((one) => one.id === "sheet");
  expect(sheet?.has).toBe("ready for 260 plugs");
});

test("a module without pins is asked for pins wherever pins are needed, not for a module", () => {
  const job = smallJob();
  for (const part of job.diagram.parts) if (part.kind === "module") part.pins = [];
  job.links = [];
  const next = (id: string) => stationsOf(job, checked([])).find((one) => one.id === id)?.next;
  expect(["diagram", "match", "check"].map(next)).toEqual([
    "Add the module's pins",
    "Add the module's pins",
    "Add the module's pins",
  ]);
  job.diagram.parts = job.diagram.parts.filter((part) => part.kind !== "module");
  expect(["diagram", "match", "check"].map(next)).toEqual([
    "Place the module",
    "Place the module",
    "Place the module",
  ]);
});

test("a module without a wire has nothing to check yet, whatever is printed beside its pins", () => {
  const open = role("A1:1", { printed: "OUT", fits: ROLE_NAMES, verdict: "undecided" });
  const of = (roles: readonly ReturnType<typeof role>[]) =>
    stationsOf(smallJob(), checked(roles)).find((station) => station.id === "check");
  expect(of([open])).toMatchObject({ state: "lacking", next: "Trace the wires" });
  expect(of([open, role("A2:1")])).toMatchObject({ state: "done" });
});
