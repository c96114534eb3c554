import { describe, expect, test } from "vitest";
import { describeIssue } from "../../src/base/index.ts";
import { readJobFile, readJobText } from "../../src/job/index.ts";
import { type Loose, looseJob, smallJob } from "./small-job.ts";

/** What reading says of a small job after `spoil`: `[code, path]` of each issue. */
function issuesOf(spoil: (job: Loose) => void): (readonly [string, string])[] {
  const job = looseJob();
  spoil(job);
  const read = readJobText(JSON.stringify(job));
  return read.ok ? [] : read.issues.map(({ code, path }) => [code, path] as const);
}

function messageOf(spoil: (job: Loose) => void): string {
  const job = looseJob();
  spoil(job);
  const read = readJobText(JSON.stringify(job));
  return read.ok ? "" : read.issues.map(describeIssue).join("\n");
}

test("a good job is read as it is", () => {
  expect(readJobText(JSON.stringify(smallJob()))).toStrictEqual({ ok: true, value: smallJob() });
});

test("a byte order mark before the text does no harm", () => {
  const bytes = new TextEncoder().encode(`\ufeff${JSON.stringify(smallJob())}`);
  expect(readJobFile(bytes, "a.json").ok).toBe(true);
});

describe("the version", () => {
  test("of another format is refused by name", () => {
    expect(issuesOf((job) => (job.format = "other"))).toEqual([["wrong-format", "format"]]);
    expect(issuesOf((job) => delete job.format)).toEqual([["wrong-format", "format"]]);
  });

  test("newer than ours is refused with both numbers", () => {
    expect(issuesOf((job) => (job.version = 7))).toEqual([["newer-version", "version"]]);
    expect(messageOf((job) => (job.version = 7))).toMatch(/version 7 .* version 1\b/);
  });

  test.each([0, -1, 1.5, "1", null])("%j is no version", (version) => {
    expect(issuesOf((job) => (job.version = version))).toEqual([["wrong-version", "version"]]);
  });

  test("is looked at before anything else, since a newer job may have another shape", () => {
    const read = readJobText('{"format":"pintruth-job","version":2}');
    expect(!read.ok && read.issues.map(({ code }) => code)).toEqual(["newer-version"]);
  });
});

describe("the shape: the place and what to do are told when", () => {
  test.each<[string, (job: Loose) => void, string, string]>([
    ["a field is missing", (job) => delete job.title, "missing", "title"],
    [
      "a number is text",
      (job) => (job.diagram.wires[1].mm2 = "1,5"),
      "wrong-type",
      "diagram.wires[1].mm2",
    ],
    [
      "a point has one number",
      (job) => (job.diagram.parts[2].at = [1]),
      "not-allowed",
      "diagram.parts[2].at",
    ],
    [
      "a wire end is no reference",
      (job) => (job.diagram.wires[2].from = "A1"),
      "not-allowed",
      "diagram.wires[2].from",
    ],
    [
      "a kind is unknown",
      (job) => (job.diagram.parts[1].kind = "flux"),
      "not-one-of",
      "diagram.parts[1].kind",
    ],
    [
      "a colour is no IEC 60757 code",
      (job) => (job.diagram.wires[0].colour.base = "red"),
      "not-one-of",
      "diagram.wires[0].colour.base",
    ],
    ["an id holds a colon", (job) => (job.plugs[0].id = "X:1"), "not-allowed", "plugs[0].id"],
    [
      "an id is a word of the machinery",
      (job) => (job.machines[0].id = "toString"),
      "not-allowed",
      "machines[0].id",
    ],
    ["the voltage is above 60", (job) => (job.systemVoltage = 400), "not-allowed", "systemVoltage"],
    ["a list is an object", (job) => (job.links = {}), "wrong-type", "links"],
    [
      "a value is nothing",
      (job) => (job.machines[0].readings[0].value = null),
      "wrong-type",
      "machines[0].readings[0].value",
    ],
  ])("%s", (_what, spoil, code, path) => {
    expect(issuesOf(spoil)).toEqual([[code, path]]);
  });

  test("and in words that name the thing", () => {
    expect(messageOf((job) => (job.diagram.wires[1].mm2 = "1,5"))).toBe(
      'diagram.wires[1].mm2: "mm2" of wire W2 is "1,5" but must be a number: correct it',
    );
    expect(messageOf((job) => (job.machines[0].readings[0].value = "12 V"))).toContain(
      '"value" of reading reading1 is "12 V" but must be a number or "OL"',
    );
    expect(messageOf((job) => (job.systemVoltage = 400))).toContain("not this tool's trade");
    expect(messageOf((job) => delete job.diagram.parts[0].sheet)).toBe(
      'diagram.parts[0].sheet: part G1 has no "sheet": add it',
    );
  });
});

describe("references: the place is told when", () => {
  test.each<[string, (job: Loose) => void, string, string]>([
    ["two things share an id", (j) => (j.machines[0].id = "F1"), "duplicate-id", "machines[0].id"],
    [
      "a reading and a wire share an id",
      (j) => (j.machines[0].readings[0].id = "W1"),
      "duplicate-id",
      "machines[0].readings[0].id",
    ],
    [
      "a part lies on no sheet",
      (j) => (j.diagram.parts[1].sheet = "sheet9"),
      "unknown-sheet",
      "diagram.parts[1].sheet",
    ],
    [
      "a wire ends at no part",
      (j) => (j.diagram.wires[0].to = "F9:1"),
      "unknown-part",
      "diagram.wires[0].to",
    ],
    [
      "a wire ends at no pin",
      (j) => (j.diagram.wires[0].to = "F1:3"),
      "unknown-pin",
      "diagram.wires[0].to",
    ],
    ["a link names no pin", (j) => (j.links[0].pin = "A1:9"), "unknown-pin", "links[0].pin"],
    [
      "a link names no cavity",
      (j) => (j.links[1].cavity = "X1:9"),
      "unknown-cavity",
      "links[1].cavity",
    ],
    [
      "a link names no plug",
      (j) => (j.links[1].cavity = "X9:1"),
      "unknown-plug",
      "links[1].cavity",
    ],
    [
      "a machine's wire is in no cavity",
      (j) => (j.machines[0].wires[0].cavity = "X1:9"),
      "unknown-cavity",
      "machines[0].wires[0].cavity",
    ],
    [
      "a contact closes in no position",
      (j) => (j.diagram.parts[2].contacts[0].closedIn = ["up"]),
      "unknown-position",
      "diagram.parts[2].contacts[0].closedIn[0]",
    ],
    [
      "a switch rests in no position",
      (j) => (j.diagram.parts[2].rest = "up"),
      "unknown-position",
      "diagram.parts[2].rest",
    ],
    [
      "a module names a pin twice",
      (j) => (j.diagram.parts[3].pins[2].id = "1"),
      "duplicate-pin",
      "diagram.parts[3].pins[2].id",
    ],
    [
      "a module is fed at no pin",
      (j) => (j.diagram.parts[3].power.supply = ["9"]),
      "unknown-pin",
      "diagram.parts[3].power.supply[0]",
    ],
    [
      "a retrofit's wire ends nowhere",
      (j) =>
        (j.machines[0].changes = [
          { note: "beacon", wires: [{ id: "W9", from: "F1:2", to: "E9:1" }] },
        ]),
      "unknown-part",
      "machines[0].changes[0].wires[0].to",
    ],
    [
      "a stand-in replaces nothing",
      (j) => (j.standIns = [{ id: "standin1", kind: "relay", replaces: "A9", map: [] }]),
      "unknown-part",
      "standIns[0].replaces",
    ],
  ])("%s", (_what, spoil, code, path) => {
    expect(issuesOf(spoil)).toEqual([[code, path]]);
  });

  test("an id with two owners names both", () => {
    expect(messageOf((job) => (job.machines[0].id = "F1"))).toMatch(
      /diagram\.parts\[1\] and to machine machines\[0\]/,
    );
  });
});

describe("what is for the check to find loads all the same:", () => {
  test.each<[string, (job: Loose) => void]>([
    ["two cavities with one mark", (j) => (j.plugs[0].cavities[2].mark = "1")],
    ["a pin tied twice", (j) => j.links.push({ pin: "A1:1", cavity: "X1:3" })],
    ["a cavity tied twice", (j) => j.links.push({ pin: "A1:3", cavity: "X1:1" })],
    ["the very same link twice", (j) => j.links.push({ ...j.links[0] })],
    ["a probe on nothing", (j) => (j.machines[0].readings[0].red = "X1:9")],
    ["a reading's switch that is gone", (j) => (j.machines[0].readings[0].when.switches.S9 = "on")],
    ["a wire from a pin to itself", (j) => (j.diagram.wires[0].to = "G1:+")],
    [
      "no sheets, parts or machines at all",
      (j) => {
        j.diagram = { sheets: [], parts: [], wires: [] };
        j.links = [];
        j.machines = [];
      },
    ],
  ])("%s", (_what, spoil) => {
    expect(issuesOf(spoil)).toEqual([]);
  });
});

test("a retrofit's wires reach the diagram's parts and its own", () => {
  const spoil = (job: Loose) => {
    const lamp = { id: "E9", kind: "lamp", sheet: "sheet1", at: [9, 9], turn: 0 };
    const wires = [{ id: "W9", from: "F1:2", to: "E9:1" }];
    job.machines[0].changes = [{ note: "beacon", parts: [lamp], wires }];
  };
  expect(issuesOf(spoil)).toEqual([]);
});

test("every pin that the format's table of kinds lists may be named, and no other", () => {
  const table: [kind: string, fields: object, pins: string[], not: string][] = [
    ["battery", {}, ["+", "-"], "1"],
    ["ground", {}, ["1"], "2"],
    ["breaker", {}, ["1", "2"], "3"],
    ["relay", {}, ["85", "86", "30", "87", "87a"], "88"],
    ["relay", { poles: 2 }, ["30b", "87b", "87ab"], "30c"],
    ["lamp", {}, ["1", "2"], "A"],
    ["solenoid", {}, ["1", "2"], "P"],
    ["solenoid", { ohmsPull: 0.4, ohmsHold: 12 }, ["P", "H", "E"], "1"],
    ["sender", {}, ["1", "2"], "W"],
    ["potentiometer", {}, ["1", "2", "W"], "3"],
    ["sensor", {}, ["+", "-", "S"], "1"],
    ["alternator", {}, ["B+", "D+", "E"], "W"],
    ["converter", {}, ["in+", "in-", "out+", "out-"], "1"],
    ["diode", {}, ["A", "K"], "1"],
    ["splice", {}, ["1"], "2"],
    ["inline", { pins: [{ id: "a:b" }] }, ["a:b"], "a"],
    ["offpage", { label: "x" }, ["1"], "2"],
  ];
  for (const [kind, fields, pins, not] of table) {
    const wireTo = (pin: string) =>
      issuesOf((job) => {
        job.diagram.parts.push({ id: "T1", kind, sheet: "sheet1", at: [0, 0], turn: 0, ...fields });
        job.diagram.wires.push({ id: "W9", from: "G1:+", to: `T1:${pin}` });
      });
    for (const pin of pins) expect([kind, pin, wireTo(pin)]).toEqual([kind, pin, []]);
    expect([kind, wireTo(not)]).toEqual([kind, [["unknown-pin", "diagram.wires[3].to"]]]);
  }
});
