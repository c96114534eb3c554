import {
  type Branch,
  elementsOf,
  held,
  influences,
  type Side,
  transfer,
} from "../circuit/index.ts";
import { isFixedProbe, ownerOf } from "../job/index.ts";
import { ohmsBand } from "./band.ts";
import { idsOff, modulesAt } from "./cavity-pins.ts";
import { liveCircuit } from "./live.ts";
import { LEADS_OHMS, LEADS_REPEAT, METER_ERROR, MOST_OHMS } from "./meter.ts";
import {
  invalidReading,
  openReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
  withCaution,
  within,
} from "./prediction.ts";
import { clean, dependsSentence, isPrediction, ohmsOf, place } from "./probes.ts";
import type { Shared } from "./shared.ts";
import { tied } from "./tied.ts";

/** Ohms of a dead circuit, filaments cold; of a part that is out, on its own. */
export function predictOhms(shared: Shared, setup: ReadingSetup): Prediction {
  // both probes on a part that is out: the part itself is measured
  const owner = ownerOf(setup.red);
  const out = idsOff(setup.when);
  const onBench = !isFixedProbe(setup.red) && owner === ownerOf(setup.black) && out.includes(owner);
  if (onBench && isSource(shared, owner)) {
    return invalidReading(
      `${owner} is a source: its resistance can’t be read with an ohmmeter. Measure its volts at rest and under load.`,
    );
  }
  const side: Side = onBench ? "own" : "harness";
  const sides = onBench ? { red: side, black: side } : {};
  const bench = shared.bench(setup.when);
  const placed = place(bench, setup, sides);
  if (isPrediction(placed)) return placed;
  const { red, black } = placed;
  const { wiring, settled } = bench;
  const dead = shared.dead(setup.when);
  const seen = transfer(dead, red, black);
  const live = liveCircuit(settled, dead, seen, red, black);
  if (live !== null) return invalidReading(live);
  const { unknowns, isDoubted } = bench.doubts;
  const doubtful = shared.recent(`dead in doubt ${JSON.stringify(setup.when)}`, () =>
    held(wiring, settled.states, [], null, true, isDoubted),
  );
  const depends = influences(doubtful, unknowns, red, black);
  if (depends.length > 0) return uncertainReading(dependsSentence(depends.map(({ what }) => what)));
  const caution = pluggedIn(shared, setup);
  const ohms = seen ? ohmsOf(seen, placed) : Number.POSITIVE_INFINITY;
  if (ohms > MOST_OHMS) {
    const mayConduct = ({ acts }: Branch, index: number) =>
      acts.is === "junction" || Number.isFinite(dead.ohms[index]);
    return !tied(settled.branches, mayConduct, red, black)
      ? withCaution(openReading(), caution)
      : uncertainReading(
          "The way leads through a diode: an ohmmeter can't tell, use its diode range.",
        );
  }
  const healthy = shared.healthy(setup.when, bench);
  const real = place(healthy, setup, sides);
  const band = isPrediction(real) ? null : ohmsBand(healthy, real.red, real.black);
  const { share, digits } = METER_ERROR.ohms;
  const [low, high] = band ?? [ohms, ohms];
  const prediction = within(
    clean(ohms, "ohms"),
    Math.max(0, low - low * share - digits),
    high + high * share + digits + leadsIn(shared),
  );
  return withCaution(prediction, caution);
}

/** Zeroed leads add nothing, others all they have: what they were measured to have, or may. */
const leadsIn = ({ measured: { leads } }: Shared): number =>
  leads === null ? LEADS_OHMS : Math.max(0, leads) + LEADS_REPEAT;

/** Whether it stays a source wherever it lies. */
function isSource({ parts, job }: Shared, id: string): boolean {
  const part = parts.get(id);
  return (
    part !== undefined &&
    elementsOf(part, job.systemVoltage).some(
      ({ law }) => law.is === "source" && law.live === "always",
    )
  );
}

/** A module that is still plugged in lies beside what is measured. */
function pluggedIn(shared: Shared, { red, black, when }: ReadingSetup): string | null {
  const { plugs } = shared.job;
  const off = idsOff(when);
  const cavities = [red, black].filter(
    (probe) => !isFixedProbe(probe) && plugs.some(({ id }) => id === ownerOf(probe)),
  );
  const fitted = cavities
    .filter((cavity) => !off.includes(ownerOf(cavity)))
    .flatMap((cavity) => modulesAt(shared, cavity))
    .find((id) => !off.includes(id));
  return fitted === undefined
    ? null
    : `${fitted} is plugged in and measured along with the harness: unplug it first.`;
}
