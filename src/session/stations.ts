import { keptOf } from "../base/index.ts";
import type { CheckResult } from "../check/index.ts";
import {
  type CavityRef,
  cavityRef,
  type Job,
  type Machine,
  ownerOf,
  type Plug,
} from "../job/index.ts";
import { meterProof } from "../readings/index.ts";
import { isUntraced } from "../roles/index.ts";
import { isWiredToNothing } from "./finding-groups.ts";
import { matchables } from "./match.ts";
import { NOT_BEGUN, type ScanProgress, type ScanStep, scanStepOf } from "./scan/scan-step.ts";
import type { StationId } from "./state.ts";

/** One stop on the way through a job: what is there, and what to do next. */
export interface Station {
  readonly id: StationId;
  readonly title: string;
  /** `lacking`: nothing to work with; `started`: something left to do; `done`: has what it needs. */
  readonly state: "lacking" | "started" | "done";
  /** A few words on what is there, e.g. `6 of 6 tied`. */
  readonly has: string;
  /** The next thing to do here, one line; null when nothing is left. */
  readonly next: string | null;
}

const count = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;

/**
 * All stations in working order. Nobody is held back at one: they only say how they stand. `scan`: how
 * far the picture at hand is.
 */
export function stationsOf(
  job: Job,
  analysis: CheckResult,
  scan: ScanProgress = NOT_BEGUN,
): readonly Station[] {
  const machine = job.machines.find((one) => one.id === analysis.machine);
  return [
    diagramStation(job, analysis, scan),
    plugStation(job),
    matchStation(job),
    checkStation(job, analysis),
    proveStation(job, analysis, machine),
    sheetStation(job, analysis),
  ];
}

/** The first station with something left to do, the one to point at; null when all are done. */
export function nextStation(stations: readonly Station[]): Station | null {
  return stations.find((station) => station.state !== "done" && station.next !== null) ?? null;
}

/** What a job needs before its pins can be told apart; null when it has some. */
function lacksPins(job: Job): string | null {
  if (!job.diagram.parts.some((part) => part.kind === "module")) return "Place the module";
  return matchables(job).pins.size === 0 ? "Add the module's pins" : null;
}

/** The next step of the scan desk as the way through the job names it. */
const SCAN_STEPS: Readonly<Record<ScanStep, string>> = {
  square: "Square up the picture",
  parts: "Scan desk: find its parts",
  words: "Scan desk: read its words",
  trace: "Scan desk: trace its lines",
};

function diagramStation(job: Job, { findings }: CheckResult, scan: ScanProgress): Station {
  const { parts, wires, sheets } = job.diagram;
  const base = { id: "diagram", title: "Diagram" } as const;
  const pictured = sheets.some((sheet) => sheet.image);
  const step = scanStepOf(job, null, scan);
  if (parts.length === 0) {
    return {
      ...base,
      state: pictured ? "started" : "lacking",
      has: pictured ? count(sheets.length, "picture") : "no picture yet",
      next: step ? SCAN_STEPS[step] : "Bring in a picture of the diagram",
    };
  }
  const has = `${count(parts.length, "part")}, ${count(wires.length, "wire")}`;
  // What stands there so far came with followed lines: the module is found with the other parts.
  const lacks = step === "parts" ? SCAN_STEPS.parts : lacksPins(job);
  if (lacks) return { ...base, state: "started", has, next: lacks };
  if (wires.length === 0) {
    const next = step ? SCAN_STEPS[step] : "Trace the wires";
    return { ...base, state: "started", has, next };
  }
  const unwired = findings.filter(isWiredToNothing).length;
  if (unwired === 0) return { ...base, state: "done", has, next: null };
  const next = unwired === 1 ? "1 part lacks wires" : `${unwired} parts lack wires`;
  return { ...base, state: "started", has, next };
}

function plugStation(job: Job): Station {
  const base = { id: "plug", title: "Plug" } as const;
  const cavities = job.plugs.reduce((sum, plug) => sum + plug.cavities.length, 0);
  if (cavities === 0) {
    return {
      ...base,
      state: job.plugs.length === 0 ? "lacking" : "started",
      has: "no face yet",
      next: "Draw the face of the plug",
    };
  }
  return { ...base, state: "done", has: count(cavities, "cavity", "cavities"), next: null };
}

function matchStation(job: Job): Station {
  const base = { id: "match", title: "Match" } as const;
  const left = leftOver(job);
  const { pins } = matchables(job);
  if (pins.size === 0 || job.plugs.length === 0) {
    return {
      ...base,
      state: "lacking",
      has: "nothing to tie yet",
      next: lacksPins(job) ?? "Draw the plug first",
    };
  }
  const has = `${pins.size - left.pins.length} of ${count(pins.size, "pin")} tied`;
  const [pin] = left.pins;
  const [cavity] = left.cavities;
  if (pin && cavity) return { ...base, state: "started", has, next: `Tie pin ${pin}` };
  if (pin) return { ...base, state: "started", has, next: `Pin ${pin} has no cavity` };
  if (cavity) return { ...base, state: "started", has, next: `Cavity ${cavity} has no pin` };
  return { ...base, state: "done", has, next: null };
}

/** Module pins and wired cavities that nothing is tied to. */
export function leftOver(job: Job): {
  readonly pins: readonly string[];
  readonly cavities: readonly string[];
} {
  const { pins } = matchables(job);
  const tied = tiedIn(job.links);
  return {
    pins: [...pins].filter((pin) => !tied.has(pin)),
    cavities: job.plugs.flatMap(wiredIn).filter((cavity) => !tied.has(cavity)),
  };
}

const tiedIn = keptOf(
  (links: Job["links"]) => new Set(links.flatMap(({ pin, cavity }) => [pin, cavity])),
);

const wiredIn = keptOf((plug: Plug): readonly CavityRef[] =>
  plug.cavities
    .filter((cavity) => !cavity.empty && !cavity.blocked)
    .map((cavity) => cavityRef(plug.id, cavity.mark)),
);

function checkStation(job: Job, { roles, findings, summary }: CheckResult): Station {
  const base = { id: "check", title: "Check" } as const;
  // Before the first wire of a module nothing is held against anything.
  if (summary.contradictions === 0 && roles.every(isUntraced)) {
    const next = lacksPins(job) ?? "Trace the wires";
    return { ...base, state: "lacking", has: "nothing to check yet", next };
  }
  const { contradictions, warnings } = summary;
  if (contradictions > 0) {
    const has = count(contradictions, "contradiction");
    return { ...base, state: "started", has, next: "Read what they say" };
  }
  const aside = findings.filter(({ setAside }) => setAside !== undefined).length;
  const quiet = aside > 0 ? `${aside} set aside` : "nothing contradicted";
  return {
    ...base,
    state: "done",
    has: warnings > 0 ? count(warnings, "warning") : quiet,
    next: null,
  };
}

function proveStation(job: Job, { roles }: CheckResult, machine: Machine | undefined): Station {
  const base = { id: "prove", title: "Prove" } as const;
  const readings = machine?.readings.length ?? 0;
  const has = readings === 0 ? "no readings yet" : count(readings, "reading");
  const failed = machine && meterProof(machine, job.systemVoltage).state === "failed";
  if (failed) return { ...base, state: "started", has, next: "The meter failed its proof" };
  const tied = roles.filter((role) => role.cavity !== null);
  if (tied.length === 0) {
    return {
      ...base,
      state: readings > 0 ? "started" : "lacking",
      has,
      next: "Match the plug first",
    };
  }
  const open = tied.filter((role) => role.meterVerdict === "unproven");
  const worst =
    open.find((role) => role.verdict === "contradicted") ??
    open.find((role) => role.verdict === "undecided") ??
    open[0];
  return worst
    ? {
        ...base,
        state: readings > 0 ? "started" : "lacking",
        has,
        next: `Measure at ${worst.cavity}`,
      }
    : { ...base, state: "done", has, next: null };
}

const pluggedIn = keptOf((links: Job["links"]) => [
  ...new Set(links.map(({ cavity }) => ownerOf(cavity))),
]);

/** A station has one line: of more plugs than this only the number is told. */
const MOST_NAMED = 3;

function sheetStation(job: Job, { roles }: CheckResult): Station {
  const base = { id: "sheet", title: "Sheet" } as const;
  const tied = roles.filter((role) => role.cavity !== null);
  if (tied.length === 0) {
    return { ...base, state: "lacking", has: "nothing to print yet", next: "Match the plug first" };
  }
  const plugs = pluggedIn(job.links);
  return {
    ...base,
    state: "started",
    has: `ready for ${plugs.length <= MOST_NAMED ? plugs.join(", ") : count(plugs.length, "plug")}`,
    next: "Print the sheet",
  };
}
