import { between, transfer } from "../circuit/index.ts";
import type { CavityRef, Id, Job, Position, Reading, When } from "../job/index.ts";
import { cavityRef } from "../job/index.ts";
import { batteriesOf, modulesAt, pinsOfCavity } from "./cavity-pins.ts";
import { METER_OHMS, MOST_OHMS } from "./meter.ts";
import { predictWith } from "./predict.ts";
import type { ExpectedReading, ReadingSetup } from "./prediction.ts";
import { isPrediction, ohmsOf, place } from "./probes.ts";
import { DEAD_VOLTS, FULL, provesOf } from "./proves.ts";
import { phrasesForWhen } from "./setup-words.ts";
import { type Shared, sharedFor } from "./shared.ts";
import { solidWays } from "./solid-ways.ts";
import { statesAround } from "./switch-states.ts";

type Switches = Readonly<Record<Id, Position>>;

/** How many readings are worth offering at one cavity. */
const MOST_READINGS = 5;
/** Ways of different ohms that are worth a reading each. */
const MOST_WAYS = 2;

/** What the harness holds at the cavity in one state, with its modules unplugged. */
interface Glimpse {
  readonly switches: Switches;
  /** Null where nothing but the meter holds it. */
  readonly volts: number | null;
  /** A way that passes no load leads to a feed, or to chassis. */
  readonly isFed: boolean;
  readonly isGrounded: boolean;
}

/** The readings worth taking at one cavity, the most telling first. */
export const expectedAt = (job: Job, machine: Id, cavity: CavityRef): readonly ExpectedReading[] =>
  expectedWith(sharedFor(job, machine), cavity);

/** The readings worth taking at every cavity of the plugs, each state solved once for all of them. */
export function expectedAtAll(
  job: Job,
  machine: Id,
): ReadonlyMap<CavityRef, readonly ExpectedReading[]> {
  const shared = sharedFor(job, machine);
  return new Map(
    job.plugs.flatMap((plug) =>
      plug.cavities.map(({ mark }) => {
        const cavity = cavityRef(plug.id, mark);
        return [cavity, expectedWith(shared, cavity)] as const;
      }),
    ),
  );
}

const expectedWith = (shared: Shared, cavity: CavityRef): readonly ExpectedReading[] =>
  shared.once(`expected ${cavity}`, () => expectedAfresh(shared, cavity));

function expectedAfresh(shared: Shared, cavity: CavityRef): readonly ExpectedReading[] {
  const { job } = shared;
  const modules = modulesAt(shared, cavity);
  const base: When = modules.length > 0 ? { unplugged: [...modules] } : {};
  const glimpses = statesAround(shared, pinsOfCavity(job, cavity)).map((switches) =>
    glimpse(shared, cavity, { ...base, ...withSwitches(switches) }, switches),
  );
  const rest = glimpses[0];
  if (!rest) return [];
  const batteries = batteriesOf(shared);
  const dead = (switches: Switches): When => ({
    ...base,
    ...withSwitches(switches),
    ...(batteries.length > 0 ? { removed: [...batteries] } : {}),
  });

  // one state for each thing that the switches make of it, the one with the fewest moves
  const different = distinct(glimpses, job.systemVoltage);
  const isFull = ({ volts }: Glimpse) => (volts ?? 0) >= FULL * job.systemVoltage;
  const fed = different.find((one) => isFull(one) && one.isFed);
  const throughLoad = different.find((one) => isFull(one) && !one.isFed);

  const offers: Offer[] = [];
  const offer = (weight: number, setup: ReadingSetup) => {
    const prediction = predictWith(shared, setup);
    if (prediction.invalid !== null || prediction.uncertain !== null) return;
    const bearing = {
      isFeed: fed !== undefined,
      switched: phrasesForWhen(job, withSwitches(setup.when.switches ?? {})).join(" and "),
      loads: loadsOn(shared, setup),
      isSolid: setup.quantity === "ohms" && isSolidWay(shared, setup),
    };
    offers.push({
      weight,
      setup,
      ...prediction,
      proves: provesOf(shared, setup, prediction, bearing),
    });
  };
  const volts = (switches: Switches, extra: Partial<ReadingSetup> = {}): ReadingSetup => ({
    quantity: "volts",
    red: cavity,
    black: "chassis",
    when: { ...base, ...withSwitches(switches) },
    ...extra,
  });

  different.forEach((found, index) => {
    offer(index === 0 ? 50 : 60 - index, volts(found.switches));
  });
  if (fed) offer(80, volts(fed.switches, { with: "test-lamp" }));

  const ohmsTo = (black: Reading["black"], switches: Switches): ReadingSetup => ({
    quantity: "ohms",
    red: cavity,
    black,
    when: dead(switches),
  });
  const seen = new Set<string>();
  let ways = 0;
  for (const { switches } of glimpses.filter((one) => Object.keys(one.switches).length < 3)) {
    if (ways >= MOST_WAYS) break;
    const setup = ohmsTo("chassis", switches);
    const key = roundedOhms(deadOhms(shared, setup));
    if (seen.has(key)) continue;
    seen.add(key);
    const found = predictWith(shared, setup);
    if (found.predicted === null) continue;
    const isWay = found.predicted !== "OL";
    if (isWay) ways++;
    // what hangs on a feed says little about the feed
    offer(isWay ? (fed ? 30 : 70) - ways : fed ? 20 : 40, setup);
  }
  const grounded = rest.volts !== null && Math.abs(rest.volts) < DEAD_VOLTS && rest.isGrounded;
  if (grounded && batteries.length === 1) {
    offer(75, { ...volts({}), red: "battery+", black: cavity, with: "test-lamp" });
  }
  if (throughLoad && batteries.length === 1) {
    offer(72, ohmsTo("battery+", throughLoad.switches));
  }
  return offers
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_READINGS)
    .map(({ weight: _, ...reading }) => reading);
}

interface Offer extends ExpectedReading {
  readonly weight: number;
}

const withSwitches = (switches: Switches): Pick<When, "switches"> =>
  Object.keys(switches).length > 0 ? { switches: { ...switches } } : {};

/** From the state as it is without a meter, whose own ohms are put to it afterwards. */
function glimpse(shared: Shared, cavity: CavityRef, when: When, switches: Switches): Glimpse {
  const { wiring, settled } = shared.bench(when);
  const nothing = { switches, volts: null, isFed: false, isGrounded: false };
  const placed = place({ wiring }, { red: cavity, black: "chassis" });
  if (isPrediction(placed)) return nothing;
  const seen = transfer(settled.point, placed.red, placed.black);
  if (!seen) return nothing;
  const ohms = ohmsOf(seen, placed);
  const volts = between(settled.point, placed.red, placed.black) ?? 0;
  const ways = solidWays(shared, settled, settled.point);
  return {
    switches,
    volts: (volts * METER_OHMS) / (METER_OHMS + ohms),
    isFed: ways.isFed(placed.red),
    isGrounded: ways.joins(placed.red, placed.black),
  };
}

/** Whether a way that passes no load leads from one lead to the other, the circuit being dead. */
function isSolidWay(shared: Shared, setup: ReadingSetup): boolean {
  const bench = shared.bench(setup.when);
  const placed = place(bench, setup);
  if (isPrediction(placed)) return false;
  const ways = solidWays(shared, bench.settled, shared.dead(setup.when));
  return ways.joins(placed.red, placed.black);
}

/** Ω of a dead circuit between the two leads, as drawn; infinite where nothing joins them. */
function deadOhms(shared: Shared, setup: ReadingSetup): number {
  const placed = place(shared.bench(setup.when), setup);
  if (isPrediction(placed)) return Number.POSITIVE_INFINITY;
  const seen = transfer(shared.dead(setup.when), placed.red, placed.black);
  return seen ? ohmsOf(seen, placed) : Number.POSITIVE_INFINITY;
}

/** Loads named in a sentence, at most. */
const MOST_LOADS = 2;
/** Share of what flows between the leads that makes a load the one that the reading is about. */
const CHIEF_SHARE = 0.2;

/** The loads that the way between the leads leads through, those that take most of it. */
function loadsOn(shared: Shared, { red, black, when }: ReadingSetup): readonly Id[] {
  const { wiring, settled } = shared.bench(when);
  const placed = place({ wiring }, { red, black });
  if (isPrediction(placed)) return [];
  const { point, branches } = settled;
  const seen = transfer(point, placed.red, placed.black);
  if (!seen) return [];
  const found = new Map<Id, number>();
  branches.forEach(({ a, b, element, owner, acts }, index) => {
    const is = element?.law.is;
    if (owner === null || is === undefined || !LOADS.has(is) || acts.is === "junction") return;
    const share = ((seen[a] as number) - (seen[b] as number)) / (point.ohms[index] as number);
    if (Math.abs(share) >= CHIEF_SHARE) found.set(owner, Math.abs(share));
  });
  return [...found]
    .sort(([, a], [, b]) => b - a)
    .slice(0, MOST_LOADS)
    .map(([id]) => id);
}

const LOADS: ReadonlySet<string> = new Set(["load", "coil", "resistor", "sender", "wiper"]);

/** What a mechanic would call the same: nothing holds it, dead, something between, full. */
function distinct(glimpses: readonly Glimpse[], systemVoltage: number): readonly Glimpse[] {
  const seen = new Set<string>();
  return glimpses
    .filter(({ volts }) => {
      const size = Math.abs(volts ?? 0);
      const key =
        volts === null
          ? "floating"
          : size < DEAD_VOLTS
            ? "dead"
            : size < FULL * systemVoltage
              ? "between"
              : "full";
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .slice(0, 3);
}

/** Ohms that a mechanic would call the same. */
const roundedOhms = (ohms: number): string =>
  ohms > MOST_OHMS ? "OL" : ohms < 1 ? "0" : String(Math.round(Math.log2(ohms)));
