/** A checker that follows the edits held against a check of a fresh copy after each of them. */
import { expect, test, vi } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { checkJob, createChecker } from "../../src/check/index.ts";
import {
  applyEdit,
  EMPTY_HISTORY,
  type Job,
  redo,
  undo,
  type Versioned,
  type Wire,
} from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";
import { withBattery } from "../support/circuit-builder.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { randomEdit } from "../support/random-edit.ts";
import { randomJob } from "../support/random-job.ts";
import { wiringEdit } from "../support/wiring-edit.ts";

// Every edit is checked afresh as well, readings and all.
vi.setConfig({ testTimeout: 120_000 });

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20250917);

/** A copy that shares nothing with the job: what is known of the one is no help with the other. */
const fresh = (job: Job): Job => JSON.parse(JSON.stringify(job));

/** Follows edits and undone ones, checking all machines of the job after each. */
function follow(seed: number, job: Job, edits: number, edit: typeof randomEdit): void {
  const random = seededRandom(seed);
  const checkers = new Map<string, ReturnType<typeof createChecker>>();
  let now: Versioned = applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  });
  for (let n = 0; n < edits; n++) {
    const label = step();
    for (const { id } of now.job.machines) {
      const checker = checkers.get(id) ?? createChecker(id);
      checkers.set(id, checker);
      // Now and then one checker misses some edits, as that of a machine not looked at does.
      if (random.chance(0.2)) continue;
      const found = checker.check(now.job);
      const where = `seed ${seed}, edit ${n}: ${label}, ${id}`;
      expect(found, where).toEqual(checkJob(fresh(now.job), id));
    }
  }

  function step(): string {
    if (random.chance(0.1)) {
      now = undo(now);
      return "undo";
    }
    if (random.chance(0.05)) {
      now = redo(now);
      return "redo";
    }
    const { label, change } = edit(random);
    now = applyEdit(now, label, change);
    return label;
  }
}

const seeds = (count: number, first: number) =>
  Array.from({ length: count }, (_, index) => SEED + first + index);

const eitherEdit = (random: Random) =>
  random.chance(0.5) ? randomEdit(random) : wiringEdit(random);

test("on machines that make sense, what it says after each edit is what a fresh check says", () => {
  for (const seed of seeds(25, 0)) follow(seed, randomCircuit(seededRandom(seed)), 20, wiringEdit);
});

test("on jobs that make no sense either, any kind of edit", () => {
  for (const seed of seeds(14, 1000)) {
    const job = randomJob(seededRandom(seed), { parts: 14, wires: 18, plugs: 2, machines: 2 });
    follow(seed, job, 20, eitherEdit);
  }
});

test("on a large machine, where most of it is left as it was", () => {
  for (const seed of seeds(2, 2000)) follow(seed, bigJob(400), 30, wiringEdit);
});

test("on one net of more pins than are noted one by one", () => {
  const pins = Object.fromEntries(Array.from({ length: 90 }, (_, n) => [String(n + 1), "OUT"]));
  const circuit = withBattery().module("A1", pins).part("splice", "SP1").part("lamp", "P1");
  for (let n = 1; n <= 90; n++) circuit.wire(`A1:${n} SP1:1`);
  circuit.wire("SP1:1 P1:1", "P1:2 GND1:1");
  for (const seed of seeds(2, 3000)) follow(seed, circuit.job, 30, wiringEdit);
});

test("on relays that hold themselves and one another", () => {
  const circuit = withBattery()
    .part("relay", "K1")
    .part("relay", "K2")
    .contact("S1", "operator")
    .contact("S2", "operator")
    .module("A1", { "1": "SW", "2": "OUT" })
    // K1 seals itself in over S1; each one's rested contact lies in the other's coil.
    .wire("G1:+ S1:1", "S1:2 K1:86", "G1:+ K1:30", "K1:87 K1:86")
    .wire("G1:+ S2:1", "S2:2 K2:86", "K1:85 K2:30", "K2:87a GND1:1")
    .wire("K2:85 GND1:1", "K1:87 A1:1", "A1:2 K2:86");
  for (const seed of seeds(12, 4000)) follow(seed, circuit.job, 25, wiringEdit);
});

test("a wire that comes back finds the part that its end has become meanwhile", () => {
  const { job } = withBattery()
    .part("lamp", "P1")
    .part("ground", "GND2", { place: "engine" })
    .wire("G1:+ P1:1", "P1:2 GND2:1", "GND2:1 GND1:1");
  const [first, second, strap] = job.diagram.wires;
  const machine = "machine1";
  const checker = createChecker(machine);
  const drawn = (wires: (Wire | undefined)[], place: string): Job => ({
    ...job,
    diagram: {
      ...job.diagram,
      parts: job.diagram.parts.map((part) => (part.id === "GND2" ? { ...part, place } : part)),
      wires: wires.filter((wire) => wire !== undefined),
    } as Job["diagram"],
  });
  for (const state of [
    drawn([first, second, strap], "engine"),
    drawn([first], "engine"),
    drawn([first], "cab"),
    drawn([first, second, strap], "cab"),
  ])
    expect(checker.check(state)).toEqual(checkJob(fresh(state), machine));
});

test("wires and parts taken away leave the roles of every module apart from them the same objects", () => {
  const checker = createChecker("machine1");
  let now: Versioned = applyEdit({ job: bigJob(400), history: EMPTY_HISTORY }, "", (draft) => {
    draft.title += "!";
  });
  const changedBy = (change: (draft: Job) => void) => {
    const before = new Map(checker.check(now.job).roles.map((role) => [role.pin, role]));
    now = applyEdit(now, "Take away", change);
    const after = checker.check(now.job);
    expect(after).toEqual(checkJob(fresh(now.job), "machine1"));
    const changed = after.roles.filter((role) => before.get(role.pin) !== role);
    return [...new Set(changed.map((role) => role.pin.split(":")[0]))];
  };
  const module = "A14";
  const takeWires = (draft: Job, isGone: (wire: Wire) => boolean) => {
    draft.diagram.wires = draft.diagram.wires.filter((wire) => !isGone(wire as Wire));
  };
  const lampWire = ({ from, to }: Wire) => [from, to].includes(`${module}:5`);
  expect(changedBy((draft) => takeWires(draft, lampWire))).toEqual([module]);
  const plain = new Set([`${module}:2`, `${module}:4`, `${module}:6`, `${module}:7`]);
  const many = ({ from, to }: Wire) => plain.has(from) || plain.has(to);
  expect(changedBy((draft) => takeWires(draft, many))).toEqual([module]);
  const goes = ({ from, to }: Wire) => from.startsWith("S18:") || to.startsWith("S18:");
  const took = changedBy((draft) => {
    draft.diagram.parts = draft.diagram.parts.filter(({ id }) => id !== "S18");
    takeWires(draft, goes);
  });
  expect(took).toEqual(["A18"]);
});

test("an edit that touches nothing electrical leaves every role the same object", () => {
  const checker = createChecker("machine1");
  let now: Versioned = { job: bigJob(200), history: EMPTY_HISTORY };
  now = applyEdit(now, "Freeze", (draft) => {
    draft.title += "!";
  });
  const before = checker.check(now.job);
  now = applyEdit(now, "Move", (draft) => {
    for (const part of draft.diagram.parts) part.at[0] += 1;
  });
  const after = checker.check(now.job);
  expect(after.roles).toEqual(before.roles);
  now = applyEdit(now, "Colour", (draft) => {
    for (const wire of draft.diagram.wires) wire.colour = { base: "RD" };
  });
  expect(checker.check(now.job)).toBe(after);
});

test("a word typed at one pin leaves the roles of every other module the same objects", () => {
  const checker = createChecker("machine1");
  let now: Versioned = applyEdit({ job: bigJob(400), history: EMPTY_HISTORY }, "", (draft) => {
    draft.title += "!";
  });
  const before = new Map(checker.check(now.job).roles.map((role) => [role.pin, role]));
  const [first] = now.job.diagram.parts.filter((part) => part.kind === "module");
  now = applyEdit(now, "Type", (draft) => {
    const part = draft.diagram.parts.find((one) => one.id === first?.id);
    if (part?.kind === "module" && part.pins[0]) part.pins[0].printed = "GND";
  });
  const changed = checker.check(now.job).roles.filter((role) => before.get(role.pin) !== role);
  expect(new Set(changed.map((role) => role.pin.split(":")[0]))).toEqual(new Set([first?.id]));
});

test("a word taught changes the modules that have it and leaves every other role the same object", () => {
  const checker = createChecker("machine1");
  let now: Versioned = applyEdit({ job: bigJob(400), history: EMPTY_HISTORY }, "", (draft) => {
    const part = draft.diagram.parts.find((one) => one.kind === "module");
    if (part?.kind === "module" && part.pins[0]) part.pins[0].printed = "WSP2";
  });
  const [first] = now.job.diagram.parts.filter((part) => part.kind === "module");
  const before = new Map(checker.check(now.job).roles.map((role) => [role.pin, role]));
  const lessons = [
    { printed: "elsewhere", role: "ground" },
    { printed: " wsp2 ", role: "output" },
    { printed: "WSP2", role: "ground" },
  ] as const;
  for (const [at, lesson] of lessons.entries()) {
    now = applyEdit(now, "Teach", (draft) => {
      draft.words = [...(draft.words ?? []), lesson];
    });
    const { roles } = checker.check(now.job);
    expect(roles).toEqual(createChecker("machine1").check(now.job).roles);
    const changed = roles.filter((role) => before.get(role.pin) !== role);
    // The second lesson on one word counts for nothing.
    expect(new Set(changed.map((role) => role.pin.split(":")[0]))).toEqual(
      new Set(at === 0 ? [] : [first?.id]),
    );
  }
});
