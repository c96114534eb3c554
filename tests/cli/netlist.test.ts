import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openSpice } from "../support/ngspice.ts";
import { call } from "./call.ts";

const SWEEPER = "sample-data/sweeper/job.json";
let folder = "";
const spice = await openSpice();

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pintruth-netlist-"));
});
afterAll(async () => {
  spice?.close();
  await rm(folder, { recursive: true });
});

async function fileOf(name: string, content: unknown): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

const STARTING = { switches: { S1: "start" }, engine: "cranking" };

test.skipIf(spice === null)("netlist prints a deck that ngspice solves as we do", async () => {
  const when = await fileOf("start.json", STARTING);
  const text = await call("netlist", SWEEPER, "--machine", "sweeper14", "--when", when);
  expect([text.status, text.err]).toEqual([0, ""]);
  expect(text.out).toContain("* Machine: sweeper14, Sweeper 14");
  expect(text.out).toContain('* State: S1 at "start"; engine cranking;');
  const { out } = await call("netlist", SWEEPER, "--when", when, "--json");
  const { file, netlists } = JSON.parse(out);
  expect([file, netlists.length]).toEqual([SWEEPER, 1]);
  const [{ machine, deck, nodes, relays, oscillating }] = netlists;
  expect([machine, deck, oscillating]).toEqual(["sweeper14", text.out, []]);
  // the starter's relay
  expect(relays).toMatchObject({ K1: true });
  const found = await spice?.volts(deck);
  for (const { name, volts } of nodes) {
    if (name === "0") expect(volts).toBe(0);
    else expect(found?.get(name), name).toBeCloseTo(volts, 3);
  }
  const starter = nodes.find(({ places }: { places: string[] }) => places.includes("M2:1"));
  expect(starter.volts).toBeGreaterThan(15);
});

test("without --when all is at rest; a job without machines is put out as drawn", async () => {
  const { out } = await call("netlist", SWEEPER);
  expect(out).toContain("* State: engine off; all else at rest, plugged in, fitted and good\n");
  const job = JSON.parse(await readFile(SWEEPER, "utf8"));
  const drawn = await call("netlist", await fileOf("drawn.json", { ...job, machines: [] }));
  expect([drawn.status, drawn.out.split("\n")[1]]).toEqual([0, "* Machine: as drawn"]);
});

test("several machines: a deck for each, or the one that is asked for", async () => {
  const job = JSON.parse(await readFile(SWEEPER, "utf8"));
  const none = { readings: [], trials: [], firstChecks: [], recordings: [] };
  job.machines.push({ ...job.machines[0], id: "sweeper15", ...none });
  job.machines[1].changes = [{ without: ["K1"], note: "starter relay taken out" }];
  const path = await fileOf("two.json", job);
  const both = await call("netlist", path);
  expect(both.out.match(/^\.end$/gm)).toHaveLength(2);
  const second = await call("netlist", path, "--machine=sweeper15", "--json");
  const { netlists } = JSON.parse(second.out);
  expect(netlists).toHaveLength(1);
  expect(Object.keys(netlists[0].relays)).toEqual(["K2"]);
});

test("a state that can't be read or can't be is refused with one sentence that names its file", async () => {
  const bad: readonly (readonly [string, unknown, RegExp])[] = [
    ["cut.json", '{ "switches": ', /not JSON/],
    ["list.json", [], /holds no state/],
    ["null.json", "null", /holds no state/],
    ["typo.json", { switch: { S1: "run" } }, /no field "switch".*switches/],
    ["escape.json", { "\u001b[2J\n": 1 }, /no field/],
    [
      "twice.json",
      '{"switches":{"S1":"run","S1":"off"}}',
      /switches\.S1: the file says that twice/,
    ],
    ["type.json", { switches: { S1: 3 } }, /switches\.S1: /],
    ["engine.json", { engine: "on" }, /engine: /],
    ["nobody.json", { switches: { S99: "on" } }, /S99 is not a switch/],
    ["position.json", { switches: { S1: "sideways" } }, /S1 has no position "sideways"/],
    ["absent.json", { removed: ["K99"] }, /no K99/],
    ["stand-in.json", { standIn: "SI1" }, /stand-in/],
    ["large.json", `"${"x".repeat(2e6)}"`, /larger than/],
  ];
  for (const [name, content, sentence] of bad) {
    const path = await fileOf(name, content);
    const { status, out, err } = await call("netlist", SWEEPER, "--when", path);
    expect([status, out], name).toEqual([2, ""]);
    expect(err, name).toMatch(/^\P{Cc}+\n$/u);
    expect(err, name).toContain(path);
    expect(err, name).toMatch(sentence);
  }
  const nowhere = await call("netlist", SWEEPER, "--when", join(folder, "nowhere.json"));
  expect(nowhere).toMatchObject({ status: 2, err: expect.stringContaining("no such file") });
  expect((await call("netlist", SWEEPER, "--when", folder)).err).toMatch(/^[^\n]+\n$/);
});

test("other commands take no --when, and the help tells of it", async () => {
  expect((await call("check", SWEEPER, "--when", "x.json")).status).toBe(2);
  expect((await call("netlist", "--help")).out).toContain("--when FILE");
  expect((await call("--help")).out).toContain("pintruth netlist JOB [--when FILE]");
});
