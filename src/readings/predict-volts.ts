import {
  type Bench,
  type Between,
  type Branch,
  between,
  held,
  heldBetween,
  influences,
  nominal,
  type OperatingPoint,
  settingsOf,
  transfer,
} from "../circuit/index.ts";
import { voltsBand } from "./band.ts";
import { atEdge } from "./limits.ts";
import { uncertainIn } from "./marginal-relays.ts";
import { METER_ERROR, METER_OHMS, testLamp, VOLTMETER } from "./meter.ts";
import { driversOf, moduleAmps } from "./module-amps.ts";
import {
  floatingReading,
  invalidReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
  withCaution,
  within,
} from "./prediction.ts";
import {
  clean,
  dependsSentence,
  isPrediction,
  ohmsOf,
  type Placed,
  place,
  spreadSeen,
} from "./probes.ts";
import type { Healthy, Shared } from "./shared.ts";
import { testLampAt } from "./signal-lines.ts";
import { tied } from "./tied.ts";

/** Ω of a source up to which a voltmeter's own ohms move nothing but the volts it shows. */
const STIFF = 10_000;

/** Volts and drops, with the meter alone or a test lamp as a load. */
export function predictVolts(shared: Shared, setup: ReadingSetup): Prediction {
  const isLamp = setup.with === "test-lamp";
  const bare = shared.bench(setup.when);
  const placed = place(bare, setup);
  if (isPrediction(placed)) return placed;
  const lamp = isLamp ? testLampAt(shared, setup) : null;
  if (lamp?.refused) return invalidReading(lamp.refused);
  const found = isLamp ? loaded(shared, setup) : metered(shared, setup, bare, placed);
  return withCaution(found, lamp?.caution ?? null);
}

/** A test lamp draws enough to make a state of its own. */
const loaded = (shared: Shared, setup: ReadingSetup): Prediction =>
  heldIn(shared, setup, {
    red: setup.red,
    black: setup.black,
    acts: testLamp(shared.job.systemVoltage),
  });

/** A meter takes so little that the state without it says all, but where nothing else ties the two. */
function metered(shared: Shared, setup: ReadingSetup, bare: Bench, placed: Placed): Prediction {
  const { red, black } = placed;
  const { point } = bare.settled;
  const seen = transfer(point, red, black);
  const depends = unknownAt(bare, placed);
  if (depends.length > 0) return uncertain(depends);
  if (!seen || ohmsOf(seen, placed) > STIFF) {
    if (!seen && !tied(bare.settled.branches, mayConductIn(bare), red, black))
      return floatingReading();
    return heldIn(shared, setup, { red: setup.red, black: setup.black, acts: VOLTMETER });
  }
  const volts = clean(
    ((between(point, red, black) ?? 0) * METER_OHMS) / (METER_OHMS + ohmsOf(seen, placed)),
    "volts",
  );
  const healthy = shared.healthy(setup.when, bare);
  const nodes = place(healthy, setup);
  if (isPrediction(nodes)) return nodes;
  const band = bandIn(healthy, [], nodes);
  return withCaution(
    toleranced(setup, volts, band),
    setup.quantity === "drop" ? withoutCurrent(healthy, nodes) : null,
  );
}

/** What nobody knows and could change the volts between the probes. */
function unknownAt(bench: Bench, { red, black }: Placed): readonly { readonly what: string }[] {
  const doubts = uncertainIn(bench);
  return [
    ...influences(doubts.point, doubts.unknowns, red, black),
    ...driversOf(bench.wiring, [red, black]),
  ];
}

const uncertain = (depends: readonly { readonly what: string }[]): Prediction =>
  uncertainReading(dependsSentence(depends.map(({ what }) => what)));

/** Branches that conduct, and diodes that would if a meter drew through them. */
const mayConductIn =
  ({ settled: { point } }: Bench) =>
  ({ acts }: Branch, index: number): boolean =>
    acts.is === "junction" || Number.isFinite(point.ohms[index]);

/** With the instrument in its place as part of the circuit. */
function heldIn(shared: Shared, setup: ReadingSetup, instrument: Between): Prediction {
  const bench = shared.bench(setup.when, [instrument]);
  const placed = place(bench, setup);
  if (isPrediction(placed)) return placed;
  const { red, black } = placed;
  const { wiring, settled } = bench;
  const depends = unknownAt(bench, placed);
  if (depends.length > 0) return uncertain(depends);
  const isAnother = (_: Branch, index: number) =>
    index < wiring.branches.length && Number.isFinite(settled.point.ohms[index]);
  if (setup.with !== "test-lamp" && !tied(settled.branches, isAnother, red, black))
    return floatingReading();
  const volts = clean(between(settled.point, red, black) ?? 0, "volts");
  const healthy = shared.healthy(setup.when, bench);
  const nodes = place(healthy, setup);
  if (isPrediction(nodes)) return nodes;
  const extra = heldBetween(healthy.wiring, [instrument]);
  return toleranced(setup, volts, bandIn(healthy, extra, nodes));
}

function toleranced(
  { quantity }: ReadingSetup,
  volts: number,
  band: readonly [number, number] | null,
): Prediction {
  const { share, digits } = METER_ERROR[quantity === "drop" ? "drop" : "volts"];
  const [low, high] = band ?? [volts, volts];
  return within(
    volts,
    low - Math.abs(low) * share - digits,
    high + Math.abs(high) * share + digits,
  );
}

/** Lowest and highest volts between the nodes with real joints, relays as they settled. */
export function bandIn(
  healthy: Healthy,
  extra: readonly Branch[],
  { red, black }: Placed,
): readonly [number, number] | null {
  const { wiring, states } = healthy;
  const middle = extra.length === 0 ? healthy.middle : held(wiring, states, extra);
  const band = voltsBand(healthy, extra, red, black, middle);
  if (!band) return null;
  const drawn = unsaidVolts(healthy, extra, { red, black });
  return [band[0] - drawn, band[1] + drawn];
}

/**
 * By how much the amps of modules and converters of which nothing is said still move a reading, with
 * every joint and wire that they run over as poor as a good one may be.
 */
function unsaidVolts(healthy: Healthy, extra: readonly Branch[], { red, black }: Placed): number {
  const { wiring } = healthy;
  const { unknowns, draws } = wiring;
  if (unknowns.length + draws.length === 0) return 0;
  const point = extra.length > 0 ? poorest(healthy, extra) : keptPoorest(healthy);
  const seen = transfer(point, red, black);
  if (!seen) return 0;
  const ohms = (nodes: readonly number[]) => spreadSeen(point, seen, nodes, red);
  return (
    unknowns.reduce((sum, one) => {
      const felt = ohms(one.nodes);
      return felt === 0 ? sum : sum + felt * moduleAmps(wiring, one);
    }, 0) + draws.reduce((sum, { nodes, most }) => sum + ohms(nodes) * most, 0)
  );
}

/** The state with wires, contacts and fuses at the most ohms that good ones have. */
function poorest(
  { wiring, states, limits }: Healthy,
  extra: readonly Branch[] = [],
): OperatingPoint {
  const settings = settingsOf([...wiring.branches, ...extra], (branch) => {
    const law = branch.element?.law.is;
    const isWay = branch.owner !== null && (law === undefined || WAYS.has(law));
    return isWay ? atEdge(branch, { ohms: 1, volts: 1 }, limits) : nominal(branch);
  });
  return held(wiring, states, extra, settings);
}

const WAYS: ReadonlySet<string> = new Set(["protection", "contact", "relay-contact"]);

const poorestOf = new WeakMap<Healthy, OperatingPoint>();

/** Most readings of a state are taken with nothing but the meter. */
function keptPoorest(healthy: Healthy): OperatingPoint {
  const point = poorestOf.get(healthy) ?? poorest(healthy);
  poorestOf.set(healthy, point);
  return point;
}

/** Less than a small bulb draws, A: joints show nothing of themselves. */
const TOO_LITTLE = 0.05;
/** Share of a current pushed in at the probes that flows in what they lie across. */
const ON_THE_WAY = 0.2;

/** A drop is measured with the current flowing; a caution where none does. */
function withoutCurrent({ wiring, middle }: Healthy, placed: Placed): string | null {
  const seen = transfer(middle, placed.red, placed.black);
  if (!seen) return null;
  const flows = wiring.branches.some(({ a, b }, index) => {
    const share = ((seen[a] as number) - (seen[b] as number)) / (middle.ohms[index] as number);
    return Math.abs(share) > ON_THE_WAY && Math.abs(middle.amps[index] as number) > TOO_LITTLE;
  });
  return flows
    ? null
    : "Next to no current flows here in this state: no drop proves nothing until the load is on.";
}
