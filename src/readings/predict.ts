import {
  type Acts,
  type Bench,
  type Between,
  type Branch,
  between,
  held,
  heldBetween,
  influences,
  nominal,
  type Side,
  setUp,
  transfer,
  wire,
} from "../circuit/index.ts";
import { type Id, isFixedProbe, type Job, ownerOf } from "../job/index.ts";
import { ammeterPlace } from "./ammeter-place.ts";
import { ohmsBand, voltsBand } from "./band.ts";
import { impossibleWhen } from "./impossible-when.ts";
import { keep } from "./kept-predictions.ts";
import { liveCircuit } from "./live.ts";
import {
  AMMETER,
  LEADS_OHMS,
  METER_ERROR,
  MOST_AMPS,
  MOST_OHMS,
  SHUNT_OHMS,
  testLamp,
  VOLTMETER,
} from "./meter.ts";
import {
  floatingReading,
  invalidReading,
  openReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
  within,
} from "./prediction.ts";
import { tied } from "./tied.ts";

/** Amps that a module of which nothing is said may draw through its feeds (common practice). */
const MODULE_AMPS = 2;

/** What a meter shows on a machine that is as drawn and in good order, with the band it stays in. */
export const predict = (job: Job, machine: Id, setup: ReadingSetup): Prediction =>
  keep(job, machine, setup, () => predictAfresh(job, machine, setup));

function predictAfresh(job: Job, machine: Id, setup: ReadingSetup): Prediction {
  const impossible = impossibleWhen(job, machine, setup.when);
  if (impossible !== null) return invalidReading(impossible);
  if (setup.when.standIn !== undefined) {
    return uncertainReading("A stand-in is fitted, and what it does is not worked out here.");
  }
  switch (setup.quantity) {
    case "volts":
    case "drop":
      return predictVolts(job, machine, setup);
    case "ohms":
      return setup.with === "test-lamp"
        ? invalidReading("A test lamp can't measure ohms: use the meter on a dead circuit.")
        : predictOhms(job, machine, setup);
    case "amps":
      return setup.with === "test-lamp"
        ? invalidReading(
            "A test lamp can't measure amps: use the meter in place of a removed part.",
          )
        : predictAmps(job, machine, setup);
  }
}

/** Where both probes go, or why one of them can't. */
function place(
  bench: Bench,
  setup: ReadingSetup,
  sides: { red?: Side; black?: Side } = {},
): { red: number; black: number } | Prediction {
  const [problem] = bench.wiring.problems;
  if (problem !== undefined) return invalidReading(problem);
  const red = bench.wiring.probe(setup.red, sides.red);
  const black = bench.wiring.probe(setup.black, sides.black);
  for (const probed of [red, black]) {
    if (!probed.ok)
      return probed.why === "nothing"
        ? invalidReading(probed.sentence)
        : uncertainReading(probed.sentence);
  }
  return red.ok && black.ok
    ? { red: red.node, black: black.node }
    : invalidReading("A probe is on nothing.");
}

const isPrediction = (found: object): found is Prediction => "predicted" in found;

const sentenceOf = (whats: readonly string[]): string =>
  `Depends on ${[...new Set(whats)].join(" and on ")}.`;

function predictVolts(job: Job, machine: Id, setup: ReadingSetup): Prediction {
  const acts: Acts = setup.with === "test-lamp" ? testLamp(job.systemVoltage) : VOLTMETER;
  const instrument: Between = { red: setup.red, black: setup.black, acts };
  const bench = setUp(job, machine, setup.when, [instrument]);
  const placed = place(bench, setup);
  if (isPrediction(placed)) return placed;
  const { point } = bench.settled;
  const { doubts } = bench;
  const depends = influences(doubts.point, doubts.unknowns, placed.red, placed.black);
  if (depends.length > 0) return uncertainReading(sentenceOf(depends.map(({ what }) => what)));
  if (setup.with !== "test-lamp" && !tiedWithout(bench, placed.red, placed.black)) {
    return floatingReading();
  }
  const volts = clean(between(point, placed.red, placed.black) ?? 0, "volts");
  const error = METER_ERROR[setup.quantity === "drop" ? "drop" : "volts"];
  const [low, high] = bandOf(job, machine, setup, bench, instrument) ?? [volts, volts];
  return within(
    volts,
    low - Math.abs(low) * error.share - error.digits,
    high + Math.abs(high) * error.share + error.digits,
  );
}

/** Whether two nodes hang together by more than the instrument between them. */
const tiedWithout = ({ settled, wiring }: Bench, red: number, black: number): boolean =>
  tied(
    settled.branches.filter(
      (_, index) => index < wiring.branches.length && Number.isFinite(settled.point.ohms[index]),
    ),
    red,
    black,
  );

/** Lowest and highest volts between the probes with real joints, relays as they settled. */
function bandOf(
  job: Job,
  machine: Id,
  setup: ReadingSetup,
  bench: Bench,
  instrument: Between,
): readonly [number, number] | null {
  const wiring = wire(job, machine, setup.when, "real");
  const red = wiring.probe(setup.red, instrument.sides?.red);
  const black = wiring.probe(setup.black, instrument.sides?.black);
  if (!red.ok || !black.ok) return null;
  const extra = heldBetween(wiring, [instrument]);
  const band = voltsBand(wiring, bench.settled.states, extra, red.node, black.node);
  if (!band) return null;
  const drawn =
    MODULE_AMPS * unsaidOhms(wiring.unknowns, wiring, extra, bench, red.node, black.node);
  return [band[0] - drawn, band[1] + drawn];
}

/** Ω through which the draw of modules of which nothing is said still moves a reading a little. */
function unsaidOhms(
  unknowns: Bench["doubts"]["unknowns"],
  wiring: Bench["wiring"],
  extra: readonly Branch[],
  bench: Bench,
  red: number,
  black: number,
): number {
  if (unknowns.length === 0) return 0;
  const point = held(wiring, bench.settled.states, extra, nominal);
  const seen = transfer(point, red, black);
  if (!seen) return 0;
  const { piece } = point.factored;
  return unknowns.reduce((sum, { nodes }) => {
    const felt = nodes
      .filter((node) => piece[node] === piece[red])
      .map((node) => seen[node] as number);
    return felt.length < 2 ? sum : sum + Math.max(...felt) - Math.min(...felt);
  }, 0);
}

function predictOhms(job: Job, machine: Id, setup: ReadingSetup): Prediction {
  // both probes on a part that is out: the part itself is measured
  const owner = ownerOf(setup.red);
  const out = [...(setup.when.removed ?? []), ...(setup.when.unplugged ?? [])];
  const onBench = !isFixedProbe(setup.red) && owner === ownerOf(setup.black) && out.includes(owner);
  const sides = onBench ? ({ red: "own", black: "own" } as const) : {};
  const bench = setUp(job, machine, setup.when);
  const placed = place(bench, setup, sides);
  if (isPrediction(placed)) return placed;
  const { red, black } = placed;
  const { wiring, settled } = bench;
  const dead = held(wiring, settled.states, [], nominal, true);
  const seen = transfer(dead, red, black);
  const live = liveCircuit(settled, dead, seen, red, black);
  if (live !== null) return invalidReading(live);
  const { unknowns, isDoubted } = bench.doubts;
  const doubtful = held(wiring, settled.states, [], nominal, true, isDoubted);
  const depends = influences(doubtful, unknowns, red, black);
  if (depends.length > 0) return uncertainReading(sentenceOf(depends.map(({ what }) => what)));
  const ohms = seen ? (seen[red] as number) - (seen[black] as number) : Number.POSITIVE_INFINITY;
  if (ohms > MOST_OHMS) {
    const junctions = settled.branches.filter(
      ({ acts }, index) => acts.is === "junction" || Number.isFinite(dead.ohms[index]),
    );
    return !tied(junctions, red, black)
      ? openReading()
      : uncertainReading(
          "The way leads through a diode: an ohmmeter can't tell, use its diode range.",
        );
  }
  const real = wire(job, machine, setup.when, "real");
  const redReal = real.probe(setup.red, onBench ? "own" : "harness");
  const blackReal = real.probe(setup.black, onBench ? "own" : "harness");
  const band =
    redReal.ok && blackReal.ok
      ? ohmsBand(real, settled.states, redReal.node, blackReal.node)
      : null;
  const { share, digits } = METER_ERROR.ohms;
  const [low, high] = band ?? [ohms, ohms];
  return within(
    clean(ohms, "ohms"),
    Math.max(0, low - low * share - digits),
    high + high * share + digits + LEADS_OHMS,
  );
}

function predictAmps(job: Job, machine: Id, setup: ReadingSetup): Prediction {
  const instrument: Between = { red: setup.red, black: setup.black, acts: AMMETER };
  const bench = setUp(job, machine, setup.when, [instrument]);
  const placed = place(bench, setup);
  if (isPrediction(placed)) return placed;
  const refused = ammeterPlace(job, machine, setup);
  if (refused !== null) return invalidReading(refused);
  const { point } = bench.settled;
  const amps = clean((between(point, placed.red, placed.black) ?? 0) / SHUNT_OHMS, "amps");
  if (Math.abs(amps) > MOST_AMPS) {
    return invalidReading(
      `About ${Math.round(Math.abs(amps))} A would flow: beyond the meter, which takes ${MOST_AMPS} A at most.`,
    );
  }
  const { doubts } = bench;
  const depends = influences(doubts.point, doubts.unknowns, placed.red, placed.black);
  // through a shunt every unknown's amps are felt as they are, however little it moves the volts
  const drawn = doubts.unknowns.filter((unknown) => feltThroughMeter(bench, unknown.nodes, placed));
  const whats = [...depends, ...drawn].map(({ what }) => what);
  if (whats.length > 0) return uncertainReading(sentenceOf(whats));
  const band = bandOfAmps(job, machine, setup, bench) ?? [amps, amps];
  const { share, digits } = METER_ERROR.amps;
  return within(
    amps,
    band[0] - Math.abs(band[0]) * share - digits,
    band[1] + Math.abs(band[1]) * share + digits,
  );
}

/** A hundredth of an unknown part's amps through the meter is already a wrong reading. */
const FELT_SHARE = 0.01;

function feltThroughMeter(
  { doubts: { point } }: Bench,
  nodes: readonly number[],
  { red, black }: { red: number; black: number },
): boolean {
  const seen = transfer(point, red, black);
  // in two pieces, the amps themselves come through what is not known
  if (!seen) return true;
  const { piece } = point.factored;
  const felt = nodes
    .filter((node) => piece[node] === piece[red])
    .map((node) => seen[node] as number);
  if (felt.length < 2) return false;
  return (Math.max(...felt) - Math.min(...felt)) / SHUNT_OHMS > FELT_SHARE;
}

/** With the shunt at its own middle: its ohms hardly move the amps, and never their band's sign. */
function bandOfAmps(
  job: Job,
  machine: Id,
  setup: ReadingSetup,
  bench: Bench,
): readonly [number, number] | null {
  const ohms = SHUNT_OHMS;
  const fixed: Between = {
    red: setup.red,
    black: setup.black,
    acts: { is: "ohmic", ohms, low: ohms, high: ohms },
  };
  const band = bandOf(job, machine, setup, bench, fixed);
  return band ? [band[0] / ohms, band[1] / ohms] : null;
}

/** Below these, in the quantity's own unit, stands only what ideal contacts leave behind. */
const NOTHING_LEFT = { volts: 1e-6, ohms: 1e-4, amps: 1e-9 } as const;

const clean = (value: number, unit: keyof typeof NOTHING_LEFT): number =>
  Math.abs(value) < NOTHING_LEFT[unit] ? 0 : Number(value.toPrecision(7));
