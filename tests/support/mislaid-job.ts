/**
 * Right jobs with one machine on which something at a plug was mistaken, measured on the true machine
 * as somebody would who does not know it. Nothing of the program's own hypotheses is used.
 */
import type { Random } from "../../src/base/index.ts";
import type { Job, Plug, Reading, When } from "../../src/job/index.ts";
import { settle } from "../../src/readings/index.ts";
import { drawnRight } from "./paper-jobs/drawing.ts";
import { broken, FAULT_NAMES, someFault } from "./paper-jobs/faults.ts";
import { measured, type Setup } from "./paper-jobs/meter.ts";
import type { PaperJob } from "./paper-jobs/paper-job.ts";
import { healthyTruth, type TrueMachine } from "./paper-jobs/true-machine.ts";

export interface MislaidJob {
  readonly job: Job;
  readonly plug: Plug;
  readonly did:
    | { readonly is: "exchanged"; readonly marks: readonly [string, string] }
    | { readonly is: "shifted" | "mirrored" | "nothing" }
    | { readonly is: "fault"; readonly name: string };
  /** What a meter shows at a mark of this plug, as the one who measures would note it. */
  shows(setup: Setup): Reading["value"] | null;
}

/** Where each mark's probe really goes; null: into nothing. */
type Really = (mark: string) => string | null;

const straight: Really = (mark) => mark;

/** A face in rows of five at most, whose every cavity has its image. */
function facedEvenly(plug: Plug): void {
  const rows = Math.ceil(plug.cavities.length / 5);
  const columns = Math.ceil(plug.cavities.length / rows);
  plug.cavities.forEach((cavity, index) => {
    cavity.at = [(index % columns) * 5, Math.floor(index / columns) * 5];
  });
  // places left over in the last row
  for (let index = plug.cavities.length; index < rows * columns; index++)
    plug.cavities.push({
      mark: `Z${index}`,
      at: [(index % columns) * 5, (rows - 1) * 5],
      blocked: true,
    });
}

const ownerOf = (ref: string) => ref.slice(0, ref.indexOf(":"));

export function mislaidJob(
  random: Random,
  is: MislaidJob["did"]["is"],
  readings: number,
): MislaidJob {
  const paper = drawnRight(random);
  const [plug] = paper.job.plugs;
  if (!plug) throw new Error("a paper job has a plug");
  facedEvenly(plug);
  const marks = plug.cavities.map(({ mark }) => mark);
  const tied = paper.pins.filter(({ cavity }) => cavity !== null && ownerOf(cavity) === plug.id);
  const module = ownerOf(tied[0]?.pin ?? "");
  const markOf = (pin: string) =>
    (tied.find((one) => one.pin === pin)?.cavity ?? "").slice(plug.id.length + 1);

  let truth: TrueMachine = healthyTruth(random, paper);
  let really = straight;
  let did: MislaidJob["did"] = { is: "nothing" };
  switch (is) {
    case "exchanged": {
      const one = random.pick(tied).pin;
      const other = random.pick(tied.filter(({ pin }) => pin !== one)).pin;
      truth = { ...truth, paper: rewired(paper, one, other) };
      did = { is, marks: [markOf(one), markOf(other)] };
      break;
    }
    case "shifted": {
      const columns = plug.cavities.filter(({ at }) => at[1] === 0).length;
      const by = random.pick([1, -1]);
      really = (mark) => {
        const at = marks.indexOf(mark);
        const to = (at % columns) + by;
        return to < 0 || to >= columns ? null : (marks[at + by] ?? null);
      };
      did = { is };
      break;
    }
    case "mirrored": {
      const columns = plug.cavities.filter(({ at }) => at[1] === 0).length;
      really = (mark) => {
        const at = marks.indexOf(mark);
        return marks[at - (at % columns) + columns - 1 - (at % columns)] ?? null;
      };
      did = { is };
      break;
    }
    case "fault": {
      for (;;) {
        const name = random.pick(FAULT_NAMES);
        const fault = someFault(random, paper, name);
        if (fault === null) continue;
        truth = broken(truth, fault);
        did = { is, name };
        break;
      }
      break;
    }
    case "nothing":
      break;
  }

  const at = (probe: string): string | null => {
    if (ownerOf(probe) !== plug.id) return probe;
    const mark = really(probe.slice(plug.id.length + 1));
    return mark === null ? null : `${plug.id}:${mark}`;
  };
  const pinOf = (probe: string) => tied.find(({ cavity }) => cavity === probe);
  const shows = (setup: Setup): Reading["value"] | null => {
    const [red, black] = [at(setup.red), at(setup.black)];
    if (red === null || black === null) return null;
    for (const probe of [red, black])
      if (ownerOf(probe) === plug.id && !pinOf(probe)) return setup.quantity === "ohms" ? "OL" : 0;
    return measured(random, truth, { ...setup, red, black });
  };

  const found: Reading[] = [];
  const taken = new Set<string>();
  const row =
    is === "shifted"
      ? marks.slice(0, Math.ceil(marks.length / Math.ceil(marks.length / 5)))
      : marks;
  const places = did.is === "exchanged" ? [...did.marks, ...did.marks, ...marks] : row;
  for (let n = 0; n < readings; n++) {
    const cavity = `${plug.id}:${random.pick(places)}`;
    const own = pinOf(cavity);
    if (!own) continue;
    const setup = someSetup(random, paper.job, cavity, module);
    const there = pinOf(at(cavity) ?? "");
    // nobody takes ohms across an electronic device, knowingly or not
    if (setup.quantity === "ohms" && !(own.isOhmic && (there?.isOhmic ?? true))) continue;
    const key = JSON.stringify(setup);
    const value = shows(setup);
    if (value === null || taken.has(key)) continue;
    taken.add(key);
    found.push({ id: `r${n}`, ...setup, value, at: `2026-03-01T10:${10 + n}:00Z` });
  }
  paper.job.machines.push({ id: "M1", name: "Machine M1", wires: [], readings: found, trials: [] });
  return { job: settle(paper.job), plug, did, shows };
}

function rewired(paper: PaperJob, one: string, other: string): PaperJob {
  const moved = (ref: string) => (ref === one ? other : ref === other ? one : ref);
  const { diagram } = paper.job;
  const wires = diagram.wires.map((wire) => ({
    ...wire,
    from: moved(wire.from),
    to: moved(wire.to),
  }));
  return { ...paper, job: { ...paper.job, diagram: { ...diagram, wires } } };
}

function someSetup(random: Random, job: Job, cavity: string, module: string): Setup {
  const switches: Record<string, string> = {};
  for (const part of job.diagram.parts) {
    if (part.kind !== "switch") continue;
    if (part.control === "key" ? random.chance(0.7) : random.chance(0.25))
      switches[part.id] = random.pick(part.positions);
  }
  const when: When = { switches, unplugged: [module] };
  const battery = job.diagram.parts.find(({ kind }) => kind === "battery")?.id ?? "";
  switch (random.below(4)) {
    case 0:
      return {
        quantity: "ohms",
        red: cavity,
        black: "chassis",
        when: { ...when, removed: [battery] },
      };
    case 1:
      return { quantity: "volts", red: "battery+", black: cavity, when };
    default:
      return { quantity: "volts", red: cavity, black: "chassis", when };
  }
}
