import { addTo } from "../base/index.ts";
import type { CheckResult, Finding } from "../check/index.ts";
import { pinsOf } from "../circuit/index.ts";
import { type Id, type Job, type Part, pinRef, type Reading, type Wire } from "../job/index.ts";
import { drawnJob } from "./changes/drawn-job.ts";

/** What lights up with the selection, and the path that proves the chief thing's role. */
export interface Counterparts {
  /** Pins, cavities, parts, wires, readings and finding keys, the selection itself included. */
  readonly refs: ReadonlySet<string>;
  /** Ids of parts and wires along the path, from the pin outward; empty when there is none. */
  readonly path: readonly string[];
}

/** The name a finding is selected by. Marks may hold commas, so it is compared and never parsed. */
export const findingKey = (finding: Finding): string =>
  `finding:${finding.rule}:${finding.subjects.join(",")}`;

interface JobIndex {
  readonly parts: ReadonlyMap<Id, Part>;
  readonly wires: ReadonlyMap<Id, Wire>;
  readonly wiresAt: ReadonlyMap<string, readonly Id[]>;
  /** From a pin to its cavities and from a cavity to its pins. */
  readonly tied: ReadonlyMap<string, readonly string[]>;
}

const indices = new WeakMap<Job, JobIndex>();

function indexOf(job: Job): JobIndex {
  const known = indices.get(job);
  if (known) return known;
  const wiresAt = new Map<string, string[]>();
  for (const wire of job.diagram.wires) {
    addTo(wiresAt, wire.from, wire.id);
    addTo(wiresAt, wire.to, wire.id);
  }
  const tied = new Map<string, string[]>();
  for (const link of job.links) {
    addTo(tied, link.pin, link.cavity);
    addTo(tied, link.cavity, link.pin);
  }
  const index: JobIndex = {
    parts: new Map(job.diagram.parts.map((part) => [part.id, part])),
    wires: new Map(job.diagram.wires.map((wire) => [wire.id, wire])),
    wiresAt,
    tied,
  };
  indices.set(job, index);
  return index;
}

/** Everything that lights up when `selection` is chosen; its first member is the chief one. */
export function counterparts(
  job: Job,
  analysis: CheckResult,
  selection: readonly string[],
): Counterparts {
  const index = indexOf(drawnJob(job, analysis.machine));
  const readings = job.machines.find((one) => one.id === analysis.machine)?.readings ?? [];
  const refs = new Set<string>();
  let path: readonly string[] = [];
  selection.forEach((key, rank) => {
    const finding = findingWithKey(analysis, key);
    const found = finding
      ? ofFinding(index, finding)
      : ofThing(index, analysis, readings, key, new Set());
    for (const ref of found.refs) refs.add(ref);
    if (rank === 0) path = found.path;
  });
  return { refs, path };
}

/** The finding that a selection key names, while it still holds. */
export function findingWithKey(analysis: CheckResult, key: string): Finding | null {
  if (!key.startsWith("finding:")) return null;
  return analysis.findings.find((finding) => findingKey(finding) === key) ?? null;
}

function ofFinding(index: JobIndex, finding: Finding): Counterparts {
  const refs = new Set([findingKey(finding), ...finding.subjects]);
  for (const subject of finding.subjects) {
    for (const other of index.tied.get(subject) ?? []) refs.add(other);
  }
  return { refs, path: finding.because ?? [] };
}

function ofThing(
  index: JobIndex,
  analysis: CheckResult,
  readings: readonly Reading[],
  key: string,
  refs: Set<string>,
): Counterparts {
  refs.add(key);
  const reading = readings.find((one) => one.id === key);
  const chief = reading ? reading.red : key;
  if (reading) {
    for (const probe of [reading.red, reading.black]) addWithTies(index, refs, probe);
  } else {
    addPhysical(index, refs, key);
    for (const one of readings) {
      if (refs.has(one.red) || refs.has(one.black)) refs.add(one.id);
    }
  }
  // A finding lights up for the thing itself and what it is tied to, not for everything nearby.
  const named = new Set([key, ...(index.tied.get(key) ?? [])]);
  for (const finding of analysis.findings) {
    if (finding.subjects.some((subject) => named.has(subject))) refs.add(findingKey(finding));
  }
  return { refs, path: pathOf(index, analysis, chief) };
}

/** The pin, cavity, wires and pins that physically belong to a chosen thing. */
function addPhysical(index: JobIndex, refs: Set<string>, key: string) {
  const wire = index.wires.get(key);
  const part = index.parts.get(key);
  if (wire) {
    addWithTies(index, refs, wire.from);
    addWithTies(index, refs, wire.to);
  } else if (part) {
    for (const pin of pinsOf(part)) addWithTies(index, refs, pinRef(part.id, pin.id));
  } else {
    addWithTies(index, refs, key);
    for (const ref of [key, ...(index.tied.get(key) ?? [])]) {
      for (const id of index.wiresAt.get(ref) ?? []) refs.add(id);
    }
  }
}

function addWithTies(index: JobIndex, refs: Set<string>, ref: string) {
  refs.add(ref);
  for (const other of index.tied.get(ref) ?? []) refs.add(other);
}

function pathOf(index: JobIndex, analysis: CheckResult, key: string): readonly string[] {
  const candidates = [key, ...(index.tied.get(key) ?? [])];
  return analysis.roles.find((role) => candidates.includes(role.pin))?.because ?? [];
}
