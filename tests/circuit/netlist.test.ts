import { afterAll, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { netlistOf } from "../../src/circuit/index.ts";
import type { Job, When } from "../../src/job/index.ts";
import { CircuitBuilder, withBattery } from "../support/circuit-builder.ts";
import { openSpice } from "../support/ngspice.ts";

const spice = await openSpice();
afterAll(() => spice?.close());

const lampOnRelay = () =>
  withBattery(24)
    .contact("S1", "operator")
    .part("fuse", "F1", { amps: 10 })
    .part("relay", "K1", { coilOhms: 320 })
    .part("lamp", "P1", { watts: 24 })
    .part("lamp", "P2", { watts: 24 })
    .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 K1:86", "K1:85 GND1:1")
    .wire("F1:2 K1:30", "K1:87 P1:1", "P1:2 GND1:1", "P2:1 P2:2");
const PRESSED: When = { switches: { S1: "worked" } };

/** What any line of a deck may be; nothing that a simulator would carry out. */
const LINES = [
  /^\*( [^\\\n\r]*)?$/,
  /^[RV][a-z][a-z0-9_]* (0|[a-z][a-z0-9_]*) (0|[a-z][a-z0-9_]*) -?\d+(\.\d+)?(e[+-]?\d+)?$/,
  /^B[a-z][a-z0-9_]* (0|[a-z][a-z0-9_]*) (0|[a-z][a-z0-9_]*) I=[a-z0-9_.,V()*/+-]+$/,
  /^\.options reltol=1e-6 itl1=500$/,
  /^\.op$/,
  /^\.end$/,
];

function expectTame(deck: string): void {
  const [title = "", ...lines] = deck.split("\n");
  expect(title).toMatch(/^Pintruth netlist: [^\\\n\r]*$/);
  expect(lines.pop()).toBe("");
  for (const line of lines)
    expect(
      LINES.some((one) => one.test(line)),
      line,
    ).toBe(true);
  expect(lines.filter((line) => /^\.(op|end)$/.test(line))).toEqual([".op", ".end"]);
  const names = lines.filter((line) => /^[RVB]/.test(line)).map((line) => line.split(" ")[0]);
  expect(new Set(names).size).toBe(names.length);
}

test("a deck tells the machine, its state, which relays are in, its nodes, and what it leaves out", () => {
  const { text: deck } = netlistOf(lampOnRelay().job, "machine1", PRESSED);
  expectTame(deck);
  expect(deck).toContain('* State: S1 at "worked"; engine off; all else at rest');
  expect(deck).toContain("* Relays pulled in: K1. At rest: none.");
  expect(deck).toMatch(/^\* 0 = G1:-, .*GND1:1.*chassis/m);
  expect(deck).toMatch(/^\* s1_1 = S1:1, F1:2, K1:30$/m);
  expect(deck).toMatch(/^\* Left out, because nothing ties it to the rest/m);
  expect(deck).toMatch(/^\* - P2:1, P2:2$/m);
  expect(deck).toMatch(/^Rk1_30_87 s1_1 k1_87 0\.000001$/m);
  expect(deck).not.toMatch(/^Rk1_30_87a/m);
  expect(netlistOf(lampOnRelay().job, "machine1", {}).text).toContain("* Relays pulled in: none.");
});

test("wires with size and length are resistors, wires without are one node with their ends", () => {
  const circuit = lampOnRelay();
  const wire = circuit.job.diagram.wires.find(({ from }) => from === "G1:+");
  // IEC 60228 class 5: 1 mm² is 19.5 Ω/km
  Object.assign(wire ?? {}, { mm2: 1, metres: 10 });
  const { text: deck } = netlistOf(circuit.job, "machine1", {});
  expect(deck).toMatch(/^Rw2 g1_plus f1_1 0\.195$/m);
  expect(deck.match(/^Rw/gm)).toHaveLength(1);
});

test.skipIf(spice === null)(
  "ngspice finds a published lamp's and diode's volts from the deck",
  async () => {
    // Kuphaldt, Semi, fig. 03249: 6 V battery, diode 0.7 V, lamp 5.3 V
    const { job } = new CircuitBuilder(6)
      .part("battery", "G1", { volts: 6, ohms: 0 })
      .part("diode", "R1")
      .part("lamp", "P1", { watts: 3 })
      .wire("G1:+ R1:A", "R1:K P1:1", "P1:2 G1:-");
    const volts = await spice?.volts(netlistOf(job, null, {}).text);
    expect(volts?.get("r1_k")).toBeCloseTo(5.3, 2);
  },
);

/** Text that means something to one simulator or another wherever it stands. */
const NASTY = [
  "\n.include /etc/passwd\n",
  "\r\n.control\nshell touch gone\n.endc\n",
  "\\\\",
  "\\",
  "*# quit",
  "+ 1e9",
  "$ end",
  "; end",
  "\u2028.end\u2029",
  "\u0085.end",
  "\u0000\u001b[2J",
  "\u202egpj",
  "gnd",
  "GND",
  "0",
  "time",
  " ",
  "é漢字🔧",
  "'{1/0}'",
  '"quoted"',
  "K1",
  "k1",
  "K 1",
  "K-1",
  "V(1,2)",
  "x".repeat(150),
];

function nastyJob(seed: number): { job: Job; when: When } {
  const random = seededRandom(seed);
  const nasty = () => random.pick(NASTY) + (random.chance(0.5) ? random.pick(NASTY) : "");
  const ids = new Map<string, string>();
  const used = new Set<string>();
  const rename = (id: string): string => {
    let fresh = ids.get(id);
    while (fresh === undefined || (!ids.has(id) && used.has(fresh))) {
      fresh = nasty().replaceAll(":", "") + (random.chance(0.3) ? String(random.below(9)) : "");
    }
    ids.set(id, fresh);
    used.add(fresh);
    return fresh;
  };
  const renameRef = (ref: string) => {
    const [owner = "", pin] = ref.split(":");
    return `${rename(owner)}:${pin}`;
  };
  const { job } = lampOnRelay().module("A1", { "1": null, "2": null });
  job.title = nasty();
  for (const machine of job.machines) machine.name = nasty();
  for (const part of job.diagram.parts) {
    part.id = rename(part.id);
    if (part.kind === "ground") part.place = nasty();
    if (part.kind === "switch") {
      const worked = `${nasty()}!`;
      part.positions = ["rest", worked];
      for (const contact of part.contacts) contact.closedIn = [worked];
    }
    if (part.kind === "module") for (const pin of part.pins) pin.id += nasty();
  }
  for (const wire of job.diagram.wires) {
    wire.from = renameRef(wire.from);
    wire.to = renameRef(wire.to);
    wire.id = rename(wire.id);
    Object.assign(wire, { mm2: 1, metres: 1 });
  }
  const key = job.diagram.parts.find((part) => part.kind === "switch");
  const when = key?.kind === "switch" ? { switches: { [key.id]: key.positions[1] ?? "" } } : {};
  return { job, when };
}

test("no id, title, place or position, however nasty, makes a line of its own", async () => {
  for (let seed = 1; seed <= 60; seed++) {
    const { job, when } = nastyJob(seed);
    const netlist = netlistOf(job, "machine1", when);
    expectTame(netlist.text);
    const { point, states } = netlist.bench.settled;
    expect([...states.values()]).toEqual([true]);
    if (seed > 15 || !spice) continue;
    const found = await spice.volts(netlist.text);
    for (const [node, name] of netlist.nameOf) {
      if (name !== "0") expect(found.get(name), name).toBeCloseTo(point.volts[node] as number, 3);
    }
  }
});

test("what is held between two probes is in the deck", () => {
  const acts = { is: "ohmic", ohms: 10e6, low: 10e6, high: 10e6 } as const;
  const held = [{ red: "K1:87", black: "chassis", acts }] as const;
  const { text: deck } = netlistOf(lampOnRelay().job, null, {}, held);
  expect(deck).toMatch(/^Rheld k1_87 0 10000000$/m);
});

test("a piece with a source of its own floats too, and chassis is the reference of all else", () => {
  const { job } = withBattery(24)
    .part("converter", "T1")
    .part("lamp", "P1")
    .part("lamp", "P2")
    .wire(
      "G1:+ T1:in+",
      "T1:in- GND1:1",
      "T1:out+ P1:1",
      "P1:2 T1:out-",
      "G1:+ P2:1",
      "P2:2 GND1:1",
    );
  const netlist = netlistOf(job, null, {});
  expect(netlist.floating).toEqual([
    expect.arrayContaining(["T1:out+", "T1:out-", "P1:1", "P1:2"]),
  ]);
  expect(netlist.text).not.toMatch(/^Bp1/m);
  expect(netlist.text).toMatch(/^Bp2/m);
});

test("relays that never rest, fuses that would blow and modules nobody has described are named", () => {
  const { job } = withBattery(24)
    .part("relay", "K1")
    .part("fuse", "F1", { amps: 5 })
    .part("heater", "E1", { ohms: 1 })
    .module("A7", { "1": null, "2": null })
    .wire("G1:+ F1:1", "F1:2 K1:30", "K1:87a K1:86", "K1:85 GND1:1")
    .wire("F1:2 E1:1", "E1:2 GND1:1", "F1:2 A7:1", "A7:2 GND1:1");
  const { text: deck } = netlistOf(job, null, {});
  expect(deck).toMatch(/^\* Never at rest, pinned here as at one moment: K1\.$/m);
  expect(deck).toMatch(/^\* Carries more than its rating .*: F1 \(2\d\.\d A of 5 A\)\.$/m);
  expect(deck).toMatch(/^\* Not in here, because nobody has said it: what A7 does\.$/m);
});
