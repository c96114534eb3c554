import { addTo, sameList } from "../../base/index.ts";
import { type Circuit, isElectricallySame } from "../../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  type Job,
  type Link,
  ownerOf,
  type Reading,
  type RoleName,
} from "../../job/index.ts";
import {
  type Explanation,
  evidenceOf,
  explainReading,
  type JudgedReading,
  judgeReading,
  type MeterEvidence,
  presenceContradicts,
  type RulesOut,
  rulesOut,
  settledCopy,
  type ThingRead,
  thingRead,
} from "../../readings/index.ts";
import { keepList, Last } from "./keep.ts";
import type { Now } from "./now.ts";

/** A reading held against the prediction. The same object for as long as all that it follows from is. */
export interface Judged {
  readonly reading: Reading;
  readonly judged: JudgedReading;
  readonly thing: ThingRead;
  /** What single fault gives it, where it is off its prediction or nothing should hold the point; else null. */
  explained(): Explanation | null;
  /** Whether that is worked out already, or there is nothing to explain. */
  isExplained(): boolean;
  /** What it rules out at a cavity that it was taken at; null where it shows nothing present. */
  rulesOut(cavity: CavityRef): RulesOut | null;
  /** Why it forbids a printed role at a cavity, one sentence; null where it doesn't. */
  forbids(role: RoleName, cavity: CavityRef): string | null;
}

/** Readings with what is known of them so far. */
export interface JudgedSoFar {
  /** As they are now, or as they were last; those that never were judged are left out. */
  readonly judged: readonly Judged[];
  /** Those of which not all is as it is now. */
  readonly again: ReadonlySet<Reading>;
}

interface Known {
  readonly judged: Judged;
  readonly ground: object;
  /** Of each cavity and plug that the reading names. */
  readonly links: readonly (readonly Link[] | undefined)[];
  /** All of the job: a fault may lie between any two cavities side by side. */
  readonly all: readonly Link[];
}

/** Fields of a machine that no prediction follows from; its changes are in its circuit. */
const NO_GROUND: ReadonlySet<string> = new Set([
  "id",
  "name",
  "wires",
  "readings",
  "trials",
  "recordings",
  "changes",
]);

/**
 * Looks at the readings of the machine, and at all that a prediction follows from: the circuit with
 * every number in it, the plugs, the machine's first checks, and the links of the cavities and plugs
 * that the reading itself names. What could have caused a reading that is off follows from all links
 * besides.
 */
export class JudgedReadings {
  private readonly last = new Last<readonly Judged[]>();
  private readonly links = new Last<ReadonlyMap<string, readonly Link[]>>();
  private known = new Map<Reading, Known>();
  private before: { readonly circuit: Circuit; readonly rest: readonly unknown[] } | null = null;
  private ground: object = {};
  private readonly copy = new Last<Job>();
  private evidence = new Map<CavityRef, { by: readonly Judged[]; found: MeterEvidence }>();

  /** All of them, as they are now. */
  of(now: Now): readonly Judged[] {
    const { job, machine } = now;
    const { readings } = machine;
    this.settleGround(now);
    return this.last.of([readings, job.links, this.ground], (before) => {
      const linksOf = this.linksOf(now);
      this.forgetAllBut(readings);
      for (const reading of stateByState(readings)) this.judge(now, reading, linksOf);
      const list = readings.flatMap((reading) => this.known.get(reading)?.judged ?? []);
      return keepList(before, list);
    });
  }

  /** What is known of them without working anything out. */
  soFar(now: Now): JudgedSoFar {
    const { readings } = now.machine;
    this.settleGround(now);
    this.forgetAllBut(readings);
    const linksOf = this.linksOf(now);
    const again = new Set<Reading>();
    const judged = readings.flatMap((reading) => {
      const known = this.taken(now, reading, linksOf);
      if (!known) again.add(reading);
      else if (!known.judged.isExplained()) again.add(reading);
      return known?.judged ?? this.known.get(reading)?.judged ?? [];
    });
    return { judged, again };
  }

  /** Works out one more thing of a reading; whether all is known of it then. */
  step(now: Now, reading: Reading): boolean {
    const linksOf = this.linksOf(now);
    const known = this.taken(now, reading, linksOf);
    if (!known) {
      this.judge(now, reading, linksOf);
      return false;
    }
    for (const probe of probesOf(reading)) if (linksOf(probe)) known.judged.rulesOut(probe);
    known.judged.explained();
    return true;
  }

  /** Another object as soon as anything changes that every prediction may follow from. */
  get standing(): object {
    return this.ground;
  }

  /**
   * What the readings taken at each cavity prove, of those cavities where any was taken; where some
   * are looked at again, what they proved before.
   */
  evidenceAt(
    { judged: all, again }: JudgedSoFar,
    readings: readonly Reading[],
    cavities: ReadonlySet<CavityRef>,
  ): ReadonlyMap<CavityRef, MeterEvidence> {
    const at = new Map<CavityRef, Judged[]>();
    for (const one of all)
      for (const probe of probesOf(one.reading)) if (cavities.has(probe)) addTo(at, probe, one);
    const unsure = new Set<CavityRef>();
    if (again.size > 0)
      for (const reading of readings)
        if (again.has(reading)) for (const probe of probesOf(reading)) unsure.add(probe);
    const next: typeof this.evidence = new Map();
    for (const [cavity, by] of at) {
      const known = this.evidence.get(cavity);
      const isKept = known && (unsure.has(cavity) || sameList(known.by, by));
      if (isKept) next.set(cavity, known);
      else if (!unsure.has(cavity))
        next.set(cavity, { by, found: asBefore(known?.found, evidenceBy(by, cavity)) });
    }
    this.evidence = next;
    return new Map([...next].map(([cavity, { found }]) => [cavity, found]));
  }

  private linksOf({ job, machine }: Now): LinksOf {
    const all = machine.readings.length === 0 ? NO_LINKS : job.links;
    const byName = this.links.of([all], (known) => linksByName(all, known));
    return (name) => byName.get(name);
  }

  /** Forgets readings that are gone; of one that was mended, what was said of it before stands until it is judged. */
  private forgetAllBut(readings: readonly Reading[]): void {
    const kept = new Set(readings);
    const gone = [...this.known.keys()].filter((one) => !kept.has(one));
    if (gone.length === 0) return;
    const byId = new Map(gone.map((one) => [one.id, this.known.get(one)]));
    for (const one of gone) this.known.delete(one);
    for (const reading of readings) {
      const before = byId.get(reading.id);
      if (before && !this.known.has(reading)) this.known.set(reading, { ...before, ground: {} });
    }
  }

  /** What is known of a reading, as all is now; null where that is yet to be worked out. */
  private taken({ job, machine }: Now, reading: Reading, linksOf: LinksOf): Known | null {
    const known = this.known.get(reading);
    if (known?.ground !== this.ground) return null;
    if (!sameList(known.links, namesIn(reading).map(linksOf))) return null;
    if (known.all === job.links) return known;
    const judged = explainedAnew(this.settled(job), machine.id, known.judged);
    const now = { ...known, judged, all: job.links };
    this.known.set(reading, now);
    return now;
  }

  /** The job for predictions: what is solved for one serves the others only where nothing can change in place. */
  private settled(job: Job): Job {
    return this.copy.of([job], () => settledCopy(job));
  }

  private judge(now: Now, reading: Reading, linksOf: LinksOf): void {
    if (this.taken(now, reading, linksOf)) return;
    const before = this.known.get(reading)?.judged;
    this.known.set(reading, {
      judged: judge(this.settled(now.job), now.machine.id, reading, before),
      ground: this.ground,
      links: namesIn(reading).map(linksOf),
      all: now.job.links,
    });
  }

  /** Another object as soon as anything has changed that every prediction may follow from. */
  private settleGround({ job, machine, circuit }: Now): void {
    const { systemVoltage, plugs, standIns } = job;
    const more = Object.entries(machine).flatMap(([field, value]) =>
      NO_GROUND.has(field) ? [] : [field, value],
    );
    const rest = [systemVoltage, plugs, standIns, ...more];
    const { before } = this;
    const isSame =
      before && sameList(before.rest, rest) && isElectricallySame(before.circuit, circuit);
    if (!isSame) this.ground = {};
    this.before = { circuit, rest };
  }
}

type LinksOf = (name: string) => readonly Link[] | undefined;

const probesOf = ({ red, black }: Reading): ReadonlySet<CavityRef> => new Set([red, black]);

/** Those of one state after one another: what is solved for the first serves the others. */
export function stateByState(readings: Iterable<Reading>): readonly Reading[] {
  const byState = new Map<string, Reading[]>();
  for (const reading of readings) addTo(byState, stateOf(reading), reading);
  return [...byState.values()].flat();
}

/** Equal for readings taken in the same state. */
export const stateOf = ({ when }: Reading): string => JSON.stringify(when);

/** `before`: what was said of it last; what is said again stays the same objects. */
function judge(job: Job, machine: Id, reading: Reading, before: Judged | undefined): Judged {
  const reasons = new Map<string, string | null>();
  const found = new Map<CavityRef, RulesOut | null>();
  const judged = asBefore(before?.judged, judgeReading(job, machine, reading));
  return {
    reading,
    judged,
    thing: asBefore(before?.thing, thingRead(job, machine, reading)),
    ...explainer(job, machine, reading, judged, before),
    rulesOut: (cavity) => {
      const known = found.get(cavity);
      if (known !== undefined) return known;
      const own = rulesOut(job, machine, reading, cavity);
      found.set(cavity, own);
      return own;
    },
    forbids: (role, cavity) => {
      const key = `${role} ${cavity}`;
      const known = reasons.get(key);
      if (known !== undefined) return known;
      const why = presenceContradicts(job, machine, reading, role, cavity);
      reasons.set(key, why);
      return why;
    },
  };
}

const asBefore = <T extends object | null>(before: T | undefined, now: T): T =>
  before !== undefined && JSON.stringify(before) === JSON.stringify(now) ? before : now;

const isOff = ({ verdict, floating }: JudgedReading) => verdict === "outside" || floating;

function evidenceBy(by: readonly Judged[], cavity: CavityRef): MeterEvidence {
  return evidenceOf(
    by.flatMap((one) => {
      const found = one.rulesOut(cavity);
      return found ? [{ id: one.reading.id, ...found }] : [];
    }),
  );
}

/** Worked out when it is asked for first. */
function explainer(
  job: Job,
  machine: Id,
  reading: Reading,
  judged: JudgedReading,
  before: Judged | undefined,
): Pick<Judged, "explained" | "isExplained"> {
  if (!isOff(judged)) return { explained: () => null, isExplained: () => true };
  let explanation: Explanation | null | undefined;
  // not `before` itself, which would hold on to all that came before it
  const last = before?.isExplained() ? before.explained() : undefined;
  return {
    explained: () => {
      if (explanation === undefined)
        explanation = asBefore(last, explainReading(job, machine, reading));
      return explanation;
    },
    isExplained: () => explanation !== undefined,
  };
}

/** The same where no cause is asked for. */
const explainedAnew = (job: Job, machine: Id, one: Judged): Judged =>
  isOff(one.judged) ? { ...one, ...explainer(job, machine, one.reading, one.judged, one) } : one;

/** Cavities and plugs that a reading names, by probing them or by having them off. */
const namesIn = ({ red, black, when }: Reading): readonly string[] => [
  red,
  black,
  ...(when.unplugged ?? []),
  ...(when.removed ?? []),
];

const NO_LINKS: readonly Link[] = [];

/** Links under their cavity and under their plug; the lists of before where they say the same. */
function linksByName(
  links: readonly Link[],
  before: ReadonlyMap<string, readonly Link[]> | undefined,
): ReadonlyMap<string, readonly Link[]> {
  const found = new Map<string, Link[]>();
  for (const link of links) {
    for (const name of [link.cavity, ownerOf(link.cavity)]) addTo(found, name, link);
  }
  const kept = new Map<string, readonly Link[]>(found);
  for (const [name, now] of found) {
    const known = before?.get(name);
    if (known && sameLinks(known, now)) kept.set(name, known);
  }
  return kept;
}

const sameLinks = (a: readonly Link[], b: readonly Link[]) =>
  a.length === b.length &&
  a.every((one, at) => one.pin === b[at]?.pin && one.cavity === b[at]?.cavity);
