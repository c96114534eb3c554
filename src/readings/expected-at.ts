import { between, type Side, setUp, transfer } from "../circuit/index.ts";
import type { CavityRef, Id, Job, Position, Reading, When } from "../job/index.ts";
import { batteriesOf, modulesAt, pinsOfCavity } from "./cavity-pins.ts";
import { METER_OHMS, VOLTMETER } from "./meter.ts";
import { predict } from "./predict.ts";
import type { ExpectedReading, Prediction, ReadingSetup } from "./prediction.ts";
import { statesAround } from "./switch-states.ts";

type Switches = Readonly<Record<Id, Position>>;

/** How many readings are worth offering at one cavity. */
const MOST_READINGS = 5;
/** Share of system voltage that counts as full. */
const FULL = 0.8;
/** A way of fewer ohms has no load in it worth the name. */
const DIRECT_OHMS = 2;

/** What the harness holds at the cavity in one state, with its modules unplugged. */
interface Glimpse {
  readonly switches: Switches;
  /** Null where nothing but the meter holds it. */
  readonly volts: number | null;
  /** Ω of the way that holds it. */
  readonly ohms: number;
}

/** The readings worth taking at one cavity, the most telling first. */
export function expectedAt(job: Job, machine: Id, cavity: CavityRef): readonly ExpectedReading[] {
  const modules = modulesAt(job, machine, cavity);
  const base: When = modules.length > 0 ? { unplugged: [...modules] } : {};
  const glimpses = statesAround(job, machine, pinsOfCavity(job, cavity)).map((switches) =>
    glimpse(job, machine, cavity, { ...base, ...withSwitches(switches) }, switches),
  );
  const rest = glimpses[0];
  if (!rest) return [];
  const batteries = batteriesOf(job, machine);
  const dead = (switches: Switches): When => ({
    ...base,
    ...withSwitches(switches),
    ...(batteries.length > 0 ? { removed: [...batteries] } : {}),
  });

  // one state for each thing that the switches make of it, the one with the fewest moves
  const different = distinct(glimpses, job.systemVoltage);
  const fed = different.find(
    ({ volts: held, ohms }) => (held ?? 0) >= FULL * job.systemVoltage && ohms < DIRECT_OHMS,
  );

  const offers: Offer[] = [];
  const offer = (weight: number, setup: ReadingSetup) => {
    const prediction = predict(job, machine, setup);
    if (prediction.invalid !== null || prediction.uncertain !== null) return;
    offers.push({
      weight,
      setup,
      ...prediction,
      proves: provesOf(job, setup, prediction, fed !== undefined),
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
    const setup = ohmsTo("chassis", switches);
    const found = predict(job, machine, setup);
    const key = found.predicted === null ? "none" : roundedOhms(found.predicted);
    if (found.predicted === null || seen.has(key) || ways >= 2) continue;
    seen.add(key);
    const isWay = found.predicted !== "OL";
    if (isWay) ways++;
    // what hangs on a feed says little about the feed
    offer(isWay ? (fed ? 30 : 70) - ways : fed ? 20 : 40, setup);
  }
  const grounded = rest.volts !== null && Math.abs(rest.volts) < 0.5 && rest.ohms < DIRECT_OHMS;
  if (grounded && batteries.length === 1) {
    offer(75, { ...volts({}), red: "battery+", black: cavity, with: "test-lamp" });
  }
  const throughLoad = different.find(
    ({ volts: held, ohms }) => (held ?? 0) >= FULL * job.systemVoltage && ohms >= DIRECT_OHMS,
  );
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

function glimpse(
  job: Job,
  machine: Id,
  cavity: CavityRef,
  when: When,
  switches: Switches,
): Glimpse {
  const side: Side = "harness";
  const instrument = { red: cavity, black: "chassis", acts: VOLTMETER, sides: { red: side } };
  const { wiring, settled } = setUp(job, machine, when, [instrument]);
  const red = wiring.probe(cavity);
  const black = wiring.probe("chassis");
  if (!red.ok || !black.ok) return { switches, volts: null, ohms: Number.POSITIVE_INFINITY };
  const seen = transfer(settled.point, red.node, black.node);
  const ohms = seen
    ? (seen[red.node] as number) - (seen[black.node] as number)
    : Number.POSITIVE_INFINITY;
  // what is left is the meter's own
  const isHeld = ohms < METER_OHMS * 0.99;
  return { switches, volts: isHeld ? between(settled.point, red.node, black.node) : null, ohms };
}

/** What a mechanic would call the same: nothing holds it, dead, something between, full. */
function distinct(glimpses: readonly Glimpse[], systemVoltage: number): readonly Glimpse[] {
  const seen = new Set<string>();
  return glimpses
    .filter(({ volts }) => {
      const held = Math.abs(volts ?? 0);
      const key =
        volts === null
          ? "floating"
          : held < 0.5
            ? "dead"
            : held < FULL * systemVoltage
              ? "between"
              : "full";
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .slice(0, 3);
}

/** Ohms that a mechanic would call the same. */
const roundedOhms = (ohms: number | "OL"): string =>
  ohms === "OL" ? "OL" : ohms < 1 ? "0" : String(Math.round(Math.log2(ohms)));

function provesOf(job: Job, setup: ReadingSetup, prediction: Prediction, isFeed: boolean): string {
  const { predicted, floating } = prediction;
  if (floating) return "Nothing holds this point in that state: a few ghost volts mean nothing.";
  if (setup.with === "test-lamp") {
    return setup.red === "battery+"
      ? "Lit to full volts, the ground carries current and is not only joined by a strand."
      : "Full volts with the lamp lit prove the feed under load: fuse, wire and every joint up to here.";
  }
  if (setup.quantity === "ohms") {
    if (predicted === "OL") return "Open in this state, as it should be: anything low is a leak.";
    if (typeof predicted === "number" && predicted < 1) {
      return "A solid way: nothing but wire and closed contacts between here and there.";
    }
    if (isFeed) return "What hangs on this feed, all in parallel: next to nothing is a short.";
    return "The load itself with its wiring: far lower is shorted, OL is open.";
  }
  if (typeof predicted === "number" && Math.abs(predicted) >= FULL * job.systemVoltage) {
    return "The feed arrives; only a loaded test shows whether it can carry current.";
  }
  if (typeof predicted === "number" && Math.abs(predicted) < 0.5) {
    return "No volts in this state: any here come from where none are drawn.";
  }
  return "A value between: it shows the load or sensor that holds this point.";
}
