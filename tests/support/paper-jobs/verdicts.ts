/** The checker held against paper jobs, one at a time: what it says that is false, or leaves unsaid. */
import { seededRandom } from "../../../src/base/index.ts";
import { type CheckResult, checkJob } from "../../../src/check/index.ts";
import { ask, circuitOf, LinkedNetwork } from "../../../src/circuit/index.ts";
import { settle } from "../../../src/readings/index.ts";
import { moduleCircuit, paperRoles } from "../../../src/roles/index.ts";
import { correctJob } from "./correct-job.ts";
import { foundIn, undecided, withOneDisagreement } from "./disagreeing-job.ts";
import { moduleOf } from "./disagreements/disagreement.ts";
import { drawnRight } from "./drawing.ts";
import { withOneFault } from "./faulty-job.ts";
import { modulesOf, type PaperJob } from "./paper-job.ts";
import { type Undecided, whyUndecided } from "./undecided.ts";
import { mayStand, WORDS } from "./words.ts";

export interface Mismatch {
  /** Makes the same job again. */
  readonly seed: number;
  readonly about: string;
  readonly missed: readonly string[];
  readonly extra: readonly string[];
}

export interface Pins {
  readonly all: number;
  /** Of each undecided pin, why it is. */
  readonly undecided: readonly Undecided[];
}

export interface Verdict {
  readonly mismatches: readonly Mismatch[];
  readonly pins: Pins;
  /** The fault or disagreement that was put in, and the rules by which it had to be told, once a finding. */
  readonly injected: { readonly name: string; readonly rules: readonly string[] } | null;
}

const NOTHING: Pins = { all: 0, undecided: [] };

const pinsIn = ({ roles }: CheckResult): Pins => ({
  all: roles.length,
  undecided: roles.flatMap(({ circuitRole, fits }) =>
    circuitRole === "undecided" ? [whyUndecided(fits)] : [],
  ),
});

/** The right job of a seed: the same for every verdict on it, none of which changes it. */
const jobOf = latest(correctJob);

function latest<T extends object>(make: (seed: number) => T): (seed: number) => T {
  let known: { readonly seed: number; readonly made: T } | null = null;
  return (seed) => {
    if (known?.seed !== seed) known = { seed, made: make(seed) };
    return known.made;
  };
}

/** A right job on each of its machines: nothing to be found but the pins that are undecided. */
export function judgeCorrect(seed: number): Verdict {
  const paper = jobOf(seed);
  settle(paper.job);
  let pins = NOTHING;
  const mismatches = paper.job.machines.flatMap(({ id }) => {
    const result = checkJob(paper.job, id);
    pins = pinsIn(result);
    return [
      ...compared(seed, `correct, ${id}`, undecided(paper), foundIn(result.findings)),
      ...wrongRoles(seed, paper, result),
    ];
  });
  return { mismatches, pins, injected: null };
}

/** A machine with a fault: whatever its readings show, nothing is contradicted. */
export function judgeFaulty(seed: number): Verdict {
  const { paper, name, fault, machine } = withOneFault(jobOf(seed), seed);
  const result = checkJob(settle(paper.job), machine);
  const contradictions = result.findings.filter(({ severity }) => severity === "contradiction");
  const about = `${name} ${JSON.stringify(fault)}`;
  return {
    mismatches: compared(seed, about, [], foundIn(contradictions)),
    pins: pinsIn(result),
    injected: { name, rules: [] },
  };
}

/** A job with one disagreement: exactly what follows from it is found, neither more nor less. */
export function judgeDisagreeing(seed: number): Verdict {
  const { paper, name, expected, rules } = withOneDisagreement(jobOf(seed), seed);
  const result = checkJob(settle(paper.job), "machine1");
  const findings = result.findings.filter(({ rule }) => rules === null || rules.includes(rule));
  return {
    mismatches: compared(seed, name, expected, foundIn(findings)),
    pins: pinsIn(result),
    injected: { name, rules: expected.map(ruleOf) },
  };
}

/** Every word at every pin of a drawing: contradicted where the page says it can't stand, nowhere else. */
export function judgeWords(seed: number): Verdict {
  const paper = drawnRight(seededRandom(seed));
  const circuit = circuitOf(paper.job, "none");
  const network = new LinkedNetwork();
  network.update(circuit, paper.job.systemVoltage);
  const found: string[] = [];
  const expected: string[] = [];
  for (const id of modulesOf(paper)) {
    const module = moduleOf(paper, id);
    const { value: pins } = ask(network, (sight) => moduleCircuit(sight, module));
    for (const word of WORDS) {
      const worded = {
        ...module,
        pins: module.pins.map((pin) => ({ ...pin, printed: word.text })),
      };
      for (const { pin, verdict } of paperRoles(worded, pins, () => null, [], new Map())) {
        const truth = paper.pins.find((one) => one.pin === pin);
        if (truth && !mayStand(word, truth)) expected.push(`${word.text} ${pin}`);
        if (verdict === "contradicted") found.push(`${word.text} ${pin}`);
      }
    }
  }
  const all = paper.pins.length;
  const undecided = paper.pins.flatMap(({ fits }) => (fits.length > 1 ? [whyUndecided(fits)] : []));
  return {
    mismatches: compared(seed, "words", expected, found),
    pins: { all, undecided },
    injected: null,
  };
}

function compared(
  seed: number,
  about: string,
  expected: readonly string[],
  found: readonly string[],
): readonly Mismatch[] {
  const missed = without(expected, found);
  const extra = without(found, expected);
  return missed.length + extra.length === 0 ? [] : [{ seed, about, missed, extra }];
}

/** What is left of the first list without the second, each of which takes one away. */
function without(all: readonly string[], others: readonly string[]): readonly string[] {
  const left = new Map<string, number>();
  for (const one of others) left.set(one, (left.get(one) ?? 0) + 1);
  return all.filter((one) => {
    const count = left.get(one) ?? 0;
    left.set(one, count - 1);
    return count <= 0;
  });
}

/** Pins whose roles are not those that the page gives them by the way the job was made. */
function wrongRoles(seed: number, paper: PaperJob, { roles }: CheckResult): readonly Mismatch[] {
  const inOrder = (names: readonly string[]) => [...names].sort().join(" ");
  return paper.pins.flatMap(({ pin, fits, side }) => {
    const role = roles.find((one) => one.pin === pin);
    const missed = `${pin} fits ${inOrder(fits)}`;
    const extra = `${pin} fits ${inOrder(role?.fits ?? [])}`;
    if (missed !== extra) return [{ seed, about: "roles", missed: [missed], extra: [extra] }];
    return role?.circuitSide !== side
      ? [{ seed, about: `side of ${pin}`, missed: [String(side)], extra: [`${role?.circuitSide}`] }]
      : [];
  });
}

/** The rule of a finding in the form `rule chief-subject`. */
export const ruleOf = (finding: string): string => finding.slice(0, finding.indexOf(" "));

/** One line for a failing test. */
export const inWords = ({ seed, about, missed, extra }: Mismatch): string =>
  `seed ${seed}, ${about}: missed ${missed.join("; ") || "nothing"}, extra ${extra.join("; ") || "nothing"}`;
