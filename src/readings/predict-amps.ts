import {
  type Bench,
  type Between,
  between,
  heldBetween,
  influences,
  transfer,
} from "../circuit/index.ts";
import { ammeterPlace } from "./ammeter-place.ts";
import { type Uncertain, uncertainIn } from "./marginal-relays.ts";
import { AMMETER, METER_ERROR, MOST_AMPS, SHUNT_OHMS } from "./meter.ts";
import { bandIn } from "./predict-volts.ts";
import {
  invalidReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
  within,
} from "./prediction.ts";
import { clean, dependsSentence, isPrediction, type Placed, place, spreadSeen } from "./probes.ts";
import type { Shared } from "./shared.ts";
import { hasUnsaid } from "./unsaid-values.ts";

/** Amps through the meter, in the place of a removed part or across an opened joint. */
export function predictAmps(shared: Shared, setup: ReadingSetup): Prediction {
  const bare = place(shared.bench(setup.when), setup);
  if (isPrediction(bare)) return bare;
  const refused = ammeterPlace(shared, setup);
  if (refused !== null) return invalidReading(refused);
  const bench = shared.bench(setup.when, [{ red: setup.red, black: setup.black, acts: AMMETER }]);
  const placed = place(bench, setup);
  if (isPrediction(placed)) return placed;
  const { point } = bench.settled;
  const amps = clean((between(point, placed.red, placed.black) ?? 0) / SHUNT_OHMS, "amps");
  if (Math.abs(amps) > MOST_AMPS) {
    const [low, high] = hasUnsaid(bench.wiring.branches)
      ? (bandOfAmps(shared, setup, bench) ?? [amps, amps])
      : [amps, amps];
    if (Math.max(low, -high) <= MOST_AMPS)
      return uncertainReading(
        `How much flows depends on parts whose values nobody has said: with the usual sizes about ${Math.round(Math.abs(amps))} A, beyond the meter, which takes ${MOST_AMPS} A at most.`,
      );
    return invalidReading(
      `About ${Math.round(Math.abs(amps))} A would flow: beyond the meter, which takes ${MOST_AMPS} A at most.`,
    );
  }
  const doubts = uncertainIn(bench);
  const depends = influences(doubts.point, doubts.unknowns, placed.red, placed.black);
  // through a shunt every unknown's amps are felt as they are, however little it moves the volts
  const drawn = [...doubts.unknowns, ...bench.wiring.draws].filter((unknown) =>
    feltThroughMeter(doubts, unknown.nodes, placed),
  );
  const whats = [...depends, ...drawn].map(({ what }) => what);
  if (whats.length > 0) return uncertainReading(dependsSentence(whats));
  const band = bandOfAmps(shared, setup, bench) ?? [amps, amps];
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
  { point }: Uncertain,
  nodes: readonly number[],
  { red, black }: Placed,
): boolean {
  const seen = transfer(point, red, black);
  // in two pieces, the amps themselves come through what is not known
  if (!seen) return true;
  return spreadSeen(point, seen, nodes, red) / SHUNT_OHMS > FELT_SHARE;
}

/**
 * The more ohms the meter and its leads have, the fewer amps flow, whichever way: the band reaches
 * from what flows through the least of them to what flows through the most.
 */
function bandOfAmps(
  shared: Shared,
  setup: ReadingSetup,
  bench: Bench,
): readonly [number, number] | null {
  const healthy = shared.healthy(setup.when, bench);
  const placed = place(healthy, setup);
  if (isPrediction(placed)) return null;
  // leads of which nothing is known are in the ammeter's own highest ohms
  const most = AMMETER.high + Math.max(0, shared.measured.leads ?? 0);
  const ends = [AMMETER.low, most].flatMap((ohms): readonly number[] => {
    const fixed: Between = {
      red: setup.red,
      black: setup.black,
      acts: { is: "ohmic", ohms, low: ohms, high: ohms },
    };
    const extra = heldBetween(healthy.wiring, [fixed]);
    const band = bandIn(healthy, extra, placed);
    return band ? [band[0] / ohms, band[1] / ohms] : [];
  });
  return ends.length === 0 ? null : [Math.min(...ends), Math.max(...ends)];
}
