import { addTo, sameList } from "../../base/index.ts";
import { type Circuit, isElectricallySame } from "../../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  type Job,
  type Link,
  type Machine,
  ownerOf,
  type Reading,
  type RoleName,
} from "../../job/index.ts";
import {
  type Explanation,
  explainReading,
  type JudgedReading,
  judgeReading,
  type MeterEvidence,
  meterEvidence,
  presenceContradicts,
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
  /** Why it forbids a printed role at a cavity, one sentence; null where it doesn't. */
  forbids(role: RoleName, cavity: CavityRef): string | null;
}

interface Known {
  readonly judged: Judged;
  readonly ground: object;
  /** Of each cavity and plug that the reading names. */
  readonly links: readonly (readonly Link[] | undefined)[];
  /** Of the plugs probed: a fault may lie in a cavity beside the one probed. */
  readonly beside: readonly (readonly Link[] | undefined)[];
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
 * of the plugs probed besides.
 */
export class JudgedReadings {
  private readonly last = new Last<readonly Judged[]>();
  private readonly links = new Last<ReadonlyMap<string, readonly Link[]>>();
  private known = new Map<Reading, Known>();
  private before: { readonly circuit: Circuit; readonly rest: readonly unknown[] } | null = null;
  private ground: object = {};
  private evidence = new Map<CavityRef, { by: readonly Judged[]; found: MeterEvidence }>();

  of({ job, machine, circuit }: Now): readonly Judged[] {
    const { readings } = machine;
    this.settleGround(job, machine, circuit);
    return this.last.of([readings, job.links, this.ground], (before) => {
      const all = readings.length === 0 ? NO_LINKS : job.links;
      const linksOf = this.links.of([all], (known) => linksByName(all, known));
      const next: typeof this.known = new Map();
      const list = readings.map((reading) => {
        const links = namesIn(reading).map((name) => linksOf.get(name));
        const beside = [reading.red, reading.black].map((probe) => linksOf.get(ownerOf(probe)));
        const known = this.known.get(reading);
        const isKept = known?.ground === this.ground && sameList(known.links, links);
        const isBeside = isKept && sameList(known.beside, beside);
        const judged = isKept
          ? isBeside
            ? known.judged
            : explainedAnew(job, machine.id, known.judged)
          : judge(job, machine.id, reading);
        next.set(reading, { judged, ground: this.ground, links, beside });
        return judged;
      });
      this.known = next;
      return keepList(before, list);
    });
  }

  /** Another object as soon as anything changes that every prediction may follow from. */
  get standing(): object {
    return this.ground;
  }

  /** What the readings taken at each cavity prove, of those cavities where any was taken. */
  evidenceAt(
    { job, machine }: Now,
    all: readonly Judged[],
    cavities: ReadonlySet<CavityRef>,
  ): ReadonlyMap<CavityRef, MeterEvidence> {
    const at = new Map<CavityRef, Judged[]>();
    for (const one of all) {
      for (const probe of new Set([one.reading.red, one.reading.black])) {
        if (!cavities.has(probe)) continue;
        addTo(at, probe, one);
      }
    }
    const next: typeof this.evidence = new Map();
    for (const [cavity, by] of at) {
      const known = this.evidence.get(cavity);
      const found =
        known && sameList(known.by, by) ? known.found : meterEvidence(job, machine.id, cavity);
      next.set(cavity, { by, found });
    }
    this.evidence = next;
    return new Map([...next].map(([cavity, { found }]) => [cavity, found]));
  }

  /** Another object as soon as anything has changed that every prediction may follow from. */
  private settleGround(job: Job, machine: Machine, circuit: Circuit): void {
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

function judge(job: Job, machine: Id, reading: Reading): Judged {
  const reasons = new Map<string, string | null>();
  const judged = judgeReading(job, machine, reading);
  return {
    reading,
    judged,
    thing: thingRead(job, machine, reading),
    explained: isOff(judged) ? explainer(job, machine, reading) : () => null,
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

const isOff = ({ verdict, floating }: JudgedReading) => verdict === "outside" || floating;

/** Worked out when it is asked for first. */
function explainer(job: Job, machine: Id, reading: Reading): Judged["explained"] {
  let explanation: Explanation | null | undefined;
  return () => {
    if (explanation === undefined) explanation = explainReading(job, machine, reading);
    return explanation;
  };
}

/** The same where no cause is asked for. */
const explainedAnew = (job: Job, machine: Id, one: Judged): Judged =>
  isOff(one.judged) ? { ...one, explained: explainer(job, machine, one.reading) } : one;

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
