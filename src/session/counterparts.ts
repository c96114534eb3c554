import { addTo, keptOf } from "../base/index.ts";
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

/** What is looked up of a job, each thing when it is first asked for. */
interface JobIndex {
  part(id: Id): Part | undefined;
  wire(id: Id): Wire | undefined;
  wiresAt(pin: string): readonly Id[];
  /** From a pin to its cavities and from a cavity to its pins. */
  tied(ref: string): readonly string[];
}

const partsById = keptOf(
  (parts: Job["diagram"]["parts"]) => new Map(parts.map((one) => [one.id, one])),
);
const wiresById = keptOf(
  (wires: Job["diagram"]["wires"]) => new Map(wires.map((one) => [one.id, one])),
);
const wiresByEnd = keptOf((wires: Job["diagram"]["wires"]) => {
  const ends = new Map<string, Id[]>();
  for (const { id, from, to } of wires) {
    addTo(ends, from, id);
    addTo(ends, to, id);
  }
  return ends;
});
const tiesOf = keptOf((links: Job["links"]) => {
  const ties = new Map<string, string[]>();
  for (const { pin, cavity } of links) {
    addTo(ties, pin, cavity);
    addTo(ties, cavity, pin);
  }
  return ties;
});

const NONE: readonly string[] = [];

/** Of so few things each is found sooner than all are sorted, which every edit would have done again. */
const FEW = 8;

function indexOf({ diagram: { parts, wires }, links }: Job, asked: number): JobIndex {
  const tied = (ref: string) => tiesOf(links).get(ref) ?? NONE;
  return asked <= FEW
    ? {
        part: (id) => parts.find((one) => one.id === id),
        wire: (id) => wires.find((one) => one.id === id),
        wiresAt: (pin) =>
          wires.filter(({ from, to }) => from === pin || to === pin).map(({ id }) => id),
        tied,
      }
    : {
        part: (id) => partsById(parts).get(id),
        wire: (id) => wiresById(wires).get(id),
        wiresAt: (pin) => wiresByEnd(wires).get(pin) ?? NONE,
        tied,
      };
}

/** Everything that lights up when `selection` is chosen; its first member is the chief one. */
export function counterparts(
  job: Job,
  analysis: CheckResult,
  selection: readonly string[],
): Counterparts {
  const index = indexOf(drawnJob(job, analysis.machine), selection.length);
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
    for (const other of index.tied(subject)) refs.add(other);
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
  const named = new Set([key, ...index.tied(key)]);
  for (const finding of analysis.findings) {
    if (finding.subjects.some((subject) => named.has(subject))) refs.add(findingKey(finding));
  }
  return { refs, path: pathOf(index, analysis, chief) };
}

/** The pin, cavity, wires and pins that physically belong to a chosen thing. */
function addPhysical(index: JobIndex, refs: Set<string>, key: string) {
  const wire = index.wire(key);
  const part = index.part(key);
  if (wire) {
    addWithTies(index, refs, wire.from);
    addWithTies(index, refs, wire.to);
  } else if (part) {
    for (const pin of pinsOf(part)) addWithTies(index, refs, pinRef(part.id, pin.id));
  } else {
    addWithTies(index, refs, key);
    for (const ref of [key, ...index.tied(key)]) {
      for (const id of index.wiresAt(ref)) refs.add(id);
    }
  }
}

function addWithTies(index: JobIndex, refs: Set<string>, ref: string) {
  refs.add(ref);
  for (const other of index.tied(ref)) refs.add(other);
}

function pathOf(index: JobIndex, analysis: CheckResult, key: string): readonly string[] {
  const candidates = [key, ...index.tied(key)];
  return analysis.roles.find((role) => candidates.includes(role.pin))?.because ?? [];
}
