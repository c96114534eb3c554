import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { checkJob } from "../../../src/check/index.ts";
import { cavityRef, type Job, type Machine } from "../../../src/job/index.ts";
import type { Role } from "../../../src/roles/index.ts";
import { plugRoles } from "../../../src/session/comparison/plug-roles.ts";
import {
  type Comparison,
  compareMachines,
  comparisonCsv,
  createSession,
  isDifferent,
  keepAnswering,
  questionDeskOf,
  setMachineWire,
  wordsForAmong,
  wordsForLook,
} from "../../../src/session/index.ts";
import { bigJob } from "../../support/big-job.ts";
import { lampModule, matched, reading } from "../../support/check-example.ts";
import { randomJob } from "../../support/random-job.ts";

const machine = (id: string, more: Partial<Machine> = {}): Machine => ({
  id,
  name: id.toUpperCase(),
  wires: [],
  readings: [],
  trials: [],
  ...more,
});

/** A fed and grounded lamp module whose wires have colours, numbers and sizes, and some machines. */
function jobWith(...machines: Machine[]): Job {
  const { job } = matched(lampModule({ "1": "+24V", "2": "GND", "3": "OUT" }));
  const drawn = {
    "A1:1": { colour: { base: "RD", tracer: "BU" }, number: "101", mm2: 1.5 },
    "A1:2": { colour: { base: "BK" } },
    "A1:3": { colour: { base: "GY" } },
  } as const;
  for (const wire of job.diagram.wires) {
    const end = [wire.from, wire.to].find((pin) => pin in drawn);
    if (end) Object.assign(wire, drawn[end as keyof typeof drawn]);
  }
  job.machines = machines;
  return job;
}

const compared = (job: Job): Comparison => {
  const found = compareMachines(job, "X1");
  if (!found) throw new Error("there is a plug X1");
  return found;
};

const rowOf = (job: Job, mark: string) => {
  const row = compared(job).rows.find((one) => one.mark === mark);
  if (!row) throw new Error(`there is a cavity ${mark}`);
  return row;
};

test("machines with the wires that are drawn, or with none noted, show no difference", () => {
  const asDrawn: Machine["wires"] = [
    { cavity: "X1:1", colour: { base: "RD", tracer: "BU" }, number: " 101", mm2: 1.5 },
    { cavity: "X1:2", colour: { base: "BK" } },
  ];
  const { rows } = compared(jobWith(machine("m1", { wires: asDrawn }), machine("m2")));
  expect(rows.map(isDifferent)).toEqual([false, false, false]);
  expect(rows[0]?.drawn).toEqual({
    colour: { base: "RD", tracer: "BU" },
    number: "101",
    mm2: 1.5,
    awg: null,
  });
  expect(rows[0]?.printed).toBe("+24V");
});

test("colour, number and size that are not as drawn are marked on the machine that has them", () => {
  const wires: Machine["wires"] = [
    { cavity: "X1:1", colour: { base: "YE" }, number: "7", mm2: 2.5 },
    { cavity: "X1:3", colour: { base: "GY" } },
  ];
  const job = jobWith(machine("m1"), machine("m2", { wires }));
  expect(rowOf(job, "1").cells.map(({ marks }) => marks)).toEqual([
    [],
    ["colour", "number", "size"],
  ]);
  expect(rowOf(job, "1").among).toEqual([]);
  expect(isDifferent(rowOf(job, "3"))).toBe(false);
});

test("a size in mm² is another than a drawn gauge only where neither published mapping has it so", () => {
  const marksOf = (awg: number, mm2: number, drawnMm2?: number) => {
    const job = jobWith(machine("m1", { wires: [{ cavity: "X1:2", mm2 }] }));
    for (const wire of job.diagram.wires)
      if (wire.from === "A1:2" || wire.to === "A1:2")
        Object.assign(wire, { awg, ...(drawnMm2 ? { mm2: drawnMm2 } : {}) });
    return rowOf(job, "2").cells[0]?.marks;
  };
  // AWG 16 is 1 mm² in both mappings, AWG 14 is 2 mm² (SAE) or 1.5 mm² (European drawings)
  expect([marksOf(16, 1), marksOf(14, 2), marksOf(14, 1.5)]).toEqual([[], [], []]);
  expect([marksOf(16, 1.5), marksOf(14, 2.5), marksOf(14, 1)]).toEqual([
    ["size"],
    ["size"],
    ["size"],
  ]);
  // 4/0 is in neither: 107 mm² by its area, drawn and sold as 95 to 120 mm²
  expect([marksOf(-3, 95), marksOf(-3, 120), marksOf(-3, 35)]).toEqual([[], [], ["size"]]);
  // drawn as both, it is another size only where it is neither
  expect([marksOf(14, 2.5, 2.5), marksOf(14, 2, 2.5), marksOf(14, 4, 2.5)]).toEqual([
    [],
    [],
    ["size"],
  ]);
});

test("a gauge on the diagram stands beside the size in words and in the file", () => {
  const job = jobWith(machine("m1"));
  for (const wire of job.diagram.wires)
    if (wire.from === "A1:2" || wire.to === "A1:2") wire.awg = -1;
  const comparison = compared(job);
  expect(comparison.rows.map(({ drawn }) => wordsForLook(drawn))).toEqual([
    "RDBU 101 1.5 mm²",
    "BK AWG 2/0",
    "GY",
  ]);
  expect(comparisonCsv(comparison, comparison.rows)).toContain("BK,,,2/0,");
});

const printedAt = (job: Job, pin: string) =>
  job.diagram.parts.flatMap((part) =>
    part.kind === "module" && pin.startsWith(`${part.id}:`)
      ? part.pins.flatMap(({ id, printed }) => (pin === `${part.id}:${id}` ? [printed] : []))
      : [],
  )[0];

/** Three machines of one drawing: as drawn, measured, and with a lamp's wire taken away and measured. */
function measuredMachines(): Job {
  const job = bigJob(200);
  const at = (plug: number, cavity: number, value: number, id: string) => {
    const { id: owner, cavities } = job.plugs[plug] ?? { id: "", cavities: [] };
    const red = cavityRef(owner, cavities[cavity]?.mark ?? "");
    const module = job.links.find((one) => one.cavity === red)?.pin.split(":")[0] ?? "";
    return {
      ...reading(id, value),
      red,
      black: "battery-",
      with: "test-lamp" as const,
      when: { unplugged: [module] },
    };
  };
  const readings = [at(0, 0, 24, "r1"), at(0, 1, 24, "r2"), at(1, 0, 0, "r3"), at(1, 2, 12, "r4")];
  const lamp = job.links.find(({ pin }) => printedAt(job, pin) === "LAMP")?.pin ?? "";
  const lampWire = job.diagram.wires.find(({ from, to }) => from === lamp || to === lamp)?.id ?? "";
  job.machines = [
    machine("m1"),
    machine("m2", { readings }),
    machine("m3", {
      readings: readings.map((one) => ({ ...one, id: `${one.id}b` })),
      changes: [{ without: [lampWire], note: "taken away" }],
    }),
  ];
  job.words = [{ printed: "GND", role: "supply" }];
  const [pin] = job.links.map((one) => one.pin);
  if (pin) job.adopted = [{ pin, role: "supply", machine: "m2" }];
  return job;
}

test("every pin of the plug has the role that a check of the whole machine gives it", () => {
  const random = seededRandom(7);
  const jobs = Array.from({ length: 15 }, () =>
    randomJob(random, { parts: 14, wires: 24, plugs: 2, machines: 3 }),
  );
  const measured = measuredMachines();
  const [asDrawn, metered, changed] = measured.machines.map(
    ({ id }) => checkJob(measured, id).roles,
  );
  expect(metered?.some(({ meterVerdict }) => meterVerdict !== "unproven")).toBe(true);
  expect(changed?.map(({ fits }) => fits)).not.toEqual(asDrawn?.map(({ fits }) => fits));
  for (const job of [measured, ...jobs]) {
    const whole = new Map(job.machines.map(({ id }) => [id, checkJob(job, id).roles]));
    for (const plug of job.plugs.slice(0, 3)) {
      const quick = plugRoles(job, plug);
      const tied = job.links.filter(({ cavity }) => cavity.startsWith(`${plug.id}:`));
      const pins = new Set(tied.map(({ pin }) => pin));
      const ofPlug = (roles: readonly Role[]) => roles.filter(({ pin }) => pins.has(pin));
      for (const [id, roles] of whole) expect(ofPlug(quick(id))).toEqual(ofPlug(roles));
    }
  }
});

test("base and tracer exchanged is told as that and not as another colour", () => {
  const wires: Machine["wires"] = [{ cavity: "X1:1", colour: { base: "BU", tracer: "RD" } }];
  expect(rowOf(jobWith(machine("m1", { wires })), "1").cells[0]?.marks).toEqual(["turned"]);
});

test("machines unlike one another are told where the diagram says nothing", () => {
  const noted = (number: string): Machine["wires"] => [
    { cavity: "X1:2", number },
    { cavity: "X1:3", colour: { base: "GY" } },
  ];
  const job = jobWith(
    machine("m1", { wires: noted("21") }),
    machine("m2"),
    machine("m3", { wires: noted("22") }),
  );
  expect(rowOf(job, "2").cells.every(({ marks }) => marks.length === 0)).toBe(true);
  expect(wordsForAmong(rowOf(job, "2"))).toBe("machines differ: numbers");
  expect(isDifferent(rowOf(job, "3"))).toBe(false);
});

test("each machine's readings and the meter's word stand beside the others'", () => {
  // 24 V at an unplugged fused feed is what a healthy machine shows; 0 V there is a fault.
  const job = jobWith(
    machine("m1", { readings: [reading("r1", 24)] }),
    machine("m2", { readings: [reading("r2", 0)] }),
    machine("m3"),
  );
  const { cells, among } = rowOf(job, "1");
  expect(cells.map((cell) => cell.reading?.verdict ?? null)).toEqual(["inside", "outside", null]);
  expect(among).toContain("reading");
  // Absence proves a fault and never a role: nothing is contradicted by the dead feed.
  expect(cells.map(({ meterVerdict }) => meterVerdict)).not.toContain("contradicted");
  expect(cells.map(({ verdict }) => verdict)).toEqual(["agrees", "agrees", "agrees"]);
});

test("a machine's own changes are what its wire is held against", () => {
  const changed = machine("m2", {
    changes: [
      {
        without: ["W4"],
        wires: [{ id: "W9", from: "A1:3", to: "P1:1", colour: { base: "PK" } }],
        note: "rewired",
      },
    ],
    wires: [{ cavity: "X1:3", colour: { base: "PK" } }],
  });
  const job = jobWith(machine("m1"), changed);
  const rewired = job.diagram.wires.find(({ from }) => from === "A1:3")?.id ?? "";
  if (changed.changes?.[0]) changed.changes[0].without = [rewired];
  const { cells, drawn } = rowOf(job, "3");
  expect(drawn.colour).toEqual({ base: "GY" });
  expect(cells.map(({ drawnHere }) => drawnHere?.colour?.base ?? null)).toEqual([null, "PK"]);
  expect(cells.map(({ marks }) => marks)).toEqual([[], []]);
});

test("the table as CSV has one line a cavity and each machine's columns side by side", () => {
  const wires: Machine["wires"] = [{ cavity: "X1:1", colour: { base: "BU", tracer: "RD" } }];
  const comparison = compared(jobWith(machine("m1", { wires, name: '=A "1"' }), machine("m2")));
  const [head, first, ...rest] = comparisonCsv(comparison, comparison.rows).split("\r\n");
  expect(head?.startsWith("\ufeffplug,mark,pin,printed,colour on diagram")).toBe(true);
  expect(head).toContain("M2: meter verdict");
  // A name that starts like a formula stays text.
  expect(head).toContain(`"'=A ""1"": colour"`);
  expect(first).toMatch(/^X1,1,A1:1,\+24V|^X1,1,A1:1,'\+24V/);
  expect(first).toContain("RDBU,101,1.5,,BURD,,,base and tracer exchanged");
  expect(rest).toHaveLength(3);
});

test("a large job is compared beside the screen, and only while somebody waits for it", async () => {
  const session = createSession("k", bigJob(400));
  let asked = 0;
  const desk = keepAnswering(session, () => ({
    begin: async () => {},
    check: async () => {
      throw new Error("nobody checks here");
    },
    goOn: async () => null,
    answer: () => {
      asked++;
      return new Promise(() => {});
    },
    stop: () => {},
  }));
  const [plug] = session.get().job.plugs;
  const question = { about: "comparison", plug: plug?.id ?? "" } as const;
  const settled = () => new Promise((resolve) => setTimeout(resolve));
  session.edit("Title", (draft) => {
    draft.title += "!";
  });
  await settled();
  expect(asked).toBe(0);
  expect(desk.answer(question)).toBeNull();
  const leave = desk.ask(question);
  await settled();
  expect(asked).toBe(1);
  leave();
  session.edit("Title", (draft) => {
    draft.title += "!";
  });
  await settled();
  expect(asked).toBe(1);
});

test("a colour set for one machine is one edit of that machine, taken back in one step", () => {
  const session = createSession("k", jobWith(machine("m1"), machine("m2")));
  const before = session.get().job;
  session.edit("Note the wire colour", (draft) =>
    setMachineWire(draft, "m2", "X1:3", { colour: { base: "YE" } }),
  );
  const answer = questionDeskOf(session).answer({ about: "comparison", plug: "X1" });
  expect(answer?.rows[2]?.cells.map(({ marks }) => marks)).toEqual([[], ["colour"]]);
  session.undo();
  expect(session.get().job).toEqual(before);
});
