import { cavityRef, type Job, type Probe, type Reading } from "../../job/index.ts";
import { judgeReading, settle } from "../../readings/index.ts";
import { type Evidence, type Fit, fitOf, isParted, isSameColour } from "./evidence.ts";
import { withExchangedWires } from "./exchanged-wires.ts";
import { type Hypothesis, type Move, NOTHING_MOVED, reallyAt } from "./hypothesis.ts";

/** How much agrees. */
export interface Tally {
  /** What each reading says, in the order of the evidence; a row off or a turned face, up to the first that differs. */
  readonly fits: readonly Fit[];
  readonly agree: number;
  readonly differ: number;
  readonly coloursAgree: number;
  readonly coloursDiffer: number;
  /** Of an exchange: only with the wires themselves exchanged, not with what is tied to the cavities. */
  readonly inTheLoom: boolean;
}

export const asDrawn = (evidence: Evidence): Tally =>
  tallied(
    evidence,
    evidence.readings.map(({ reading, judged }) => fitOf(evidence.job, reading, judged)),
    NOTHING_MOVED,
    false,
  );

/** What agrees if it is so. */
export function tallyOf(evidence: Evidence, hypothesis: Hypothesis): Tally {
  const { job, readings } = evidence;
  const { mishap } = hypothesis;
  const fits: Fit[] = [];
  for (const one of readings) {
    const fit = movedFit(evidence, hypothesis, one);
    fits.push(fit);
    // out of the question; of an exchange the loom may still agree
    if (fit === "differs" && mishap.is !== "exchanged") break;
  }
  const onPaper = tallied(evidence, fits, hypothesis, false);
  if (mishap.is !== "exchanged" || onPaper.differ === 0) return onPaper;
  const [a, b] = [evidence.pinAt.get(mishap.a), evidence.pinAt.get(mishap.b)];
  // with the module plugged in it matters to the module which wire it gets
  if (a === undefined || b === undefined) return onPaper;
  const isIn = ({ when }: Reading) => !isParted(evidence, [a, b], when);
  if (!readings.some(({ reading }) => isIn(reading))) return onPaper;
  const turned = settle(withExchangedWires(job, evidence.machine.id, a, b));
  const inLoom = readings.map(({ reading }, index) =>
    isIn(reading)
      ? fitOf(job, reading, judgeReading(turned, evidence.machine.id, reading))
      : (fits[index] ?? "no-word"),
  );
  const loom = tallied(evidence, inLoom, hypothesis, true);
  return loom.differ < onPaper.differ && !upsetsElsewhere(evidence, turned) ? loom : onPaper;
}

/** Whether wires exchanged in the loom make a reading differ that was taken somewhere else and is as drawn. */
const upsetsElsewhere = ({ job, machine, elsewhere }: Evidence, turned: Job): boolean =>
  elsewhere.some(
    ({ reading, judged }) =>
      fitOf(job, reading, judged) === "agrees" &&
      fitOf(job, reading, judgeReading(turned, machine.id, reading)) === "differs",
  );

function movedFit(
  evidence: Evidence,
  hypothesis: Hypothesis,
  { reading, judged }: Evidence["readings"][number],
): Fit {
  const { job, machine, plug } = evidence;
  const red = reallyAt(plug.id, hypothesis, reading.red);
  const black = reallyAt(plug.id, hypothesis, reading.black);
  if (red === null || black === null) return "differs";
  if (isUntold(evidence, red) || isUntold(evidence, black)) return "no-word";
  // an exchange leaves most readings of a large plug where they are
  const isThere = red === reading.red && black === reading.black;
  const there = isThere ? judged : judgeReading(job, machine.id, { ...reading, red, black });
  return fitOf(job, reading, there);
}

/** A cavity of this plug that holds a wire, or not, of which nothing is drawn. */
function isUntold({ plug, pinAt }: Evidence, probe: Probe): boolean {
  const own = plug.cavities.find(({ mark }) => cavityRef(plug.id, mark) === probe);
  return own !== undefined && !own.empty && !own.blocked && !pinAt.has(own.mark);
}

function tallied(
  evidence: Evidence,
  fits: readonly Fit[],
  { really }: Move,
  inTheLoom: boolean,
): Tally {
  let coloursAgree = 0;
  let coloursDiffer = 0;
  for (const { mark, colour } of evidence.colours) {
    const there = really.get(mark);
    // no wire was looked at where no cavity is
    if (there === null) {
      coloursDiffer++;
      continue;
    }
    const drawn = evidence.drawnColours(there ?? mark);
    if (drawn.length === 0) continue;
    if (drawn.some((one) => isSameColour(one, colour))) coloursAgree++;
    else coloursDiffer++;
  }
  const count = (...of: readonly Fit[]) => fits.filter((fit) => of.includes(fit)).length;
  return {
    fits,
    agree: count("agrees", "hangs-free"),
    differ: count("differs"),
    coloursAgree,
    coloursDiffer,
    inTheLoom,
  };
}
