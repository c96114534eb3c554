/** What is said of fuses and unfused feeds after each edit, held against a fresh check. */
import { expect, test, vi } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { checkJob, createChecker } from "../../src/check/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job, type Versioned } from "../../src/job/index.ts";
import { loadedMachine } from "../support/healthy-machine.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { wiringEdit } from "../support/wiring-edit.ts";

// Every edit is checked afresh as well.
vi.setConfig({ testTimeout: 120_000 });

const SEED = Number(process.env.PINTRUTH_SEED ?? 20260302);
const RULES = ["fuse-below-load", "fuse-exceeds-wire", "unfused-supply"];

const fresh = (job: Job): Job => JSON.parse(JSON.stringify(job));

/** Sizes, amps and ohms, none of which changes where current can go. */
function valueEdit(draft: Job, random: Random): void {
  const { parts, wires } = draft.diagram;
  const wire = wires[random.below(wires.length)];
  const part = parts[random.below(parts.length)];
  switch (random.below(5)) {
    case 0:
      if (wire) wire.mm2 = random.pick([0.35, 0.75, 1.5, 6]);
      break;
    case 1:
      if (wire) delete wire.mm2;
      break;
    case 2:
      draft.conductors = random.pick([{}, { insulation: 60 }, { insulation: 105, bundled: 7 }]);
      break;
    case 3:
      if (part?.kind === "fuse" || part?.kind === "breaker") part.amps = random.pick([0.3, 10, 40]);
      break;
    default:
      if (part?.kind === "heater" || part?.kind === "solenoid") part.ohms = random.pick([1, 12]);
      if (part?.kind === "lamp") part.watts = random.pick([5, 200]);
  }
}

/** A heater on a fuse too small for it, and a lamp on none. */
function addLoads({ diagram: { parts, wires } }: Job): void {
  const battery = parts.find(({ kind }) => kind === "battery")?.id;
  const place = {
    sheet: parts[0]?.sheet ?? "sheet1",
    at: [0, 0] as [number, number],
    turn: 0 as const,
  };
  parts.push(
    { kind: "fuse", id: "F90", amps: 1, ...place },
    { kind: "heater", id: "E90", ohms: 1, ...place },
    { kind: "lamp", id: "P90", watts: 21, ...place },
  );
  const ends = [
    [`${battery}:+`, "F90:1"],
    ["F90:2", "E90:1"],
    ["E90:2", `${battery}:-`],
    [`${battery}:+`, "P90:1"],
    ["P90:2", `${battery}:-`],
  ] as const;
  for (const [at, [from, to]] of ends.entries()) wires.push({ id: `W9${at}`, from, to });
}

test("what it says after each edit is what a fresh check says", () => {
  const told = new Map(RULES.map((rule) => [rule, 0]));
  for (let n = 0; n < 14; n++) {
    const random = seededRandom(SEED + n);
    const job = n % 2 === 0 ? loadedMachine(random).job : randomCircuit(random);
    const machine = job.machines[0]?.id ?? "";
    const checker = createChecker(machine);
    let now: Versioned = applyEdit({ job, history: EMPTY_HISTORY }, "Freeze", (draft) => {
      for (const wire of draft.diagram.wires) if (random.chance(0.6)) wire.mm2 = 0.75;
      for (const part of draft.diagram.parts)
        if (part.kind === "fuse" || part.kind === "breaker") part.amps = random.pick([0.3, 20, 60]);
      addLoads(draft);
    });
    for (let edit = 0; edit < 20; edit++) {
      const wiring = wiringEdit(random);
      const isValue = random.chance(0.6);
      now = applyEdit(now, isValue ? "Value" : wiring.label, (draft) =>
        isValue ? valueEdit(draft, random) : wiring.change(draft),
      );
      const mine = (checked: ReturnType<typeof checkJob>) =>
        checked.findings.filter(({ rule }) => RULES.includes(rule));
      const found = mine(checker.check(now.job));
      for (const { rule } of found) told.set(rule, (told.get(rule) ?? 0) + 1);
      expect(found, `seed ${SEED + n}, edit ${edit}`).toEqual(
        mine(checkJob(fresh(now.job), machine)),
      );
    }
  }
  for (const [rule, times] of told) expect([rule, times > 3]).toEqual([rule, true]);
});
