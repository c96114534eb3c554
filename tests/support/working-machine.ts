/**
 * A whole machine as large as one likes in which everything has a job to do: every wire has its
 * size and length, modules switch lamps, valves and relays as their inputs say, some lamps are
 * LEDs and some valves have diodes. For measuring; the same count gives the same machine.
 */
import type { Job, Part, When } from "../../src/job/index.ts";
import { bigJob } from "./big-job.ts";

const SIZES = [0.75, 1, 1.5, 2.5] as const;

export function workingMachine(wires: number): Job {
  const job = bigJob(wires);
  job.diagram.wires.forEach((wire, n) => {
    // what feeds ten modules and more is as thick as starter cables, or all would drop out together
    const isMain = n < 2 || [wire.from, wire.to].some((end) => end.startsWith("S1:"));
    wire.mm2 = isMain ? 50 : (SIZES[n % SIZES.length] as number);
    wire.metres = isMain ? 1 : 0.5 + (n % 17) / 2;
  });
  job.diagram.parts = job.diagram.parts.map(atWork);
  return job;
}

/** The key on, every second operator's switch and every third limit switch closed. */
export function working(job: Job): When {
  const switches = job.diagram.parts.filter((part) => part.kind === "switch");
  const closed = switches.filter(
    ({ control }, n) =>
      control === "key" ||
      (control === "operator" ? n % 4 === 1 : control === "limit" && n % 3 === 0),
  );
  return { switches: Object.fromEntries(closed.map(({ id }) => [id, "on"])) };
}

/** The same with one operator's switch the other way: the `n`th. */
export function afterOneSwitch(job: Job, when: When, n: number): When {
  const operated = job.diagram.parts.filter(
    (part) => part.kind === "switch" && part.control === "operator",
  );
  const { id = "" } = operated[(n * 7919) % operated.length] ?? {};
  return { switches: { ...when.switches, [id]: when.switches?.[id] === "on" ? "off" : "on" } };
}

function atWork(part: Part, n: number): Part {
  // one battery carries it all
  if (part.kind === "battery") return { ...part, ohms: 1e-5 };
  if (part.kind === "motor") return { ...part, ohms: 20 };
  if (part.kind === "lamp" && n % 3 === 0) return { ...part, led: true, watts: 5 };
  if (part.kind === "solenoid" && n % 2 === 0) return { ...part, diode: true };
  if (part.kind !== "module") return part;
  return {
    ...part,
    power: { supply: ["1"], ground: ["2"] },
    behaviour: {
      paths: [
        { between: ["1", "5"], input: "3", active: "high", does: "follow" },
        { between: ["1", "6"], input: "4", active: "low", does: "follow" },
        { between: ["1", "7"], input: "3", active: "high", does: "follow" },
      ],
      loads: [
        { between: ["1", "2"], ohms: 220 },
        { between: ["3", "2"], ohms: 4700 },
        { between: ["1", "4"], ohms: 4700 },
        { between: ["8", "2"], ohms: 1000 },
      ],
    },
  };
}
