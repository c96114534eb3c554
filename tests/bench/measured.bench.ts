import {
  type CheckedSoFar,
  type CheckResult,
  checkJob,
  createChecker,
} from "../../src/check/index.ts";
import { type Job, readJobText } from "../../src/job/index.ts";
import { pluggedBigJob } from "../support/plugged-big-job.ts";
import { edited, editKinds } from "./edits.ts";
import { type Bench, heapOf, median, type Row, times } from "./harness.ts";

/** `PINTRUTH_WIRES` takes a smaller job, for a first look. */
const WIRES = Number(process.env.PINTRUTH_WIRES ?? 10_000);
const PLUGS = Math.max(1, Math.round(WIRES / 200));
const REFERENCE = "parse and copy";
/** Plugs at which readings were taken: none, and several. */
const MEASURED = [0, 5] as const;
/** Edits of each kind, one after the other on the same job; the first few do not count. */
const EDITS = { 0: { all: 25, warmUp: 5 }, 5: { all: 3, warmUp: 1 } } as const;

const measured: Bench = {
  title: "A job of 10,000 wires and 50 plugs, half-way through the work",
  about:
    "Fifty of the modules have a plug of 24 ways, every wire there was looked at and one in forty has another colour than the one drawn. Once without a reading, once with forty of them at five plugs, some of them odd. The reference is `structuredClone(JSON.parse(text))` of the same text. A reading hangs on every load of the machine: an edit that changes the circuit has each of them predicted again, in every state that one was taken in. So the check answers first with all but that, and looks at the readings again afterwards, in steps between which the next edit is answered: the first row of an edit is that answer, the second what comes after it. Milliseconds of the processor, as the program's own thread and the collector of its garbage take them together, stand beside those of the clock.",
  async run() {
    return MEASURED.flatMap(rowsFor);
  },
};

function rowsFor(plugs: (typeof MEASURED)[number]): readonly Row[] {
  const job = pluggedBigJob(WIRES, PLUGS, plugs);
  const machine = job.machines[0]?.id ?? "";
  const readings = job.machines[0]?.readings.length ?? 0;
  const text = JSON.stringify(job);
  const parsed = (): Job => JSON.parse(text);
  if (!readJobText(text).ok) throw new Error("the large job is not a valid one");
  const base = median(
    times(
      () => structuredClone(JSON.parse(text)),
      () => null,
    ),
  );
  const name = `${readings} readings`;
  const row = (what: string, ms: number, note: string): Row => ({
    what: `${name}: ${what}`,
    median: ms,
    against: REFERENCE,
    ratio: ms / base,
    note,
  });
  const held = heapOf(() => {
    const checker = createChecker(machine);
    return [checker, checker.check(parsed())];
  });
  const few = readings > 0 ? { runs: 1, warmUp: 0 } : { runs: 5, warmUp: 1 };
  const check = median(times((fresh: Job) => checkJob(fresh, machine), parsed, few));
  const { findings, roles } = checkJob(parsed(), machine);
  const counts = `${job.diagram.parts.length} parts, ${job.diagram.wires.length} wires, ${job.plugs.length} plugs`;
  const perWire = (1000 * held) / job.diagram.wires.length;
  return [
    { what: `${name}: ${REFERENCE}`, median: base, note: counts },
    row(
      "check, nothing known yet",
      check,
      `${roles.length} pins, ${findings.length} findings; ${held.toFixed(0)} MB held by document, ` +
        `result and all that is kept for the next check, ${perWire.toFixed(1)} kB a wire`,
    ),
    ...editKinds(job).flatMap(([what, change]) => {
      const { answer, readings } = rechecks(parsed(), machine, change, EDITS[plugs]);
      const cpu = (ms: number) => `${ms.toFixed(1)} ms of the processor`;
      const first = row(`check again after an edit: ${what}`, answer.clock, cpu(answer.cpu));
      if (plugs === 0) return [first];
      const steps =
        readings.steps === 0
          ? "none is looked at again"
          : `${cpu(readings.cpu)}; ${readings.steps} steps, the longest ${readings.longest.toFixed(0)} ms`;
      return [first, row("and its readings after that", readings.clock, steps)];
    }),
  ];
}

interface Taken {
  readonly clock: number;
  readonly cpu: number;
}

interface Rechecked {
  readonly answer: Taken;
  readonly readings: Taken & { readonly steps: number; readonly longest: number };
}

/** Medians of checking again after each of a row of edits of one kind, by one who checked before. */
function rechecks(
  job: Job,
  machine: string,
  change: (draft: Job, n: number) => void,
  { all, warmUp }: { readonly all: number; readonly warmUp: number },
): Rechecked {
  const checker = createChecker(machine);
  let now = edited(job, (draft) => {
    draft.title += "!";
  });
  checker.check(now);
  const taken: Rechecked[] = [];
  for (let n = 0; n < all; n++) {
    now = edited(now, (draft) => change(draft, n));
    let last: CheckedSoFar = { result: NOTHING, again: [] };
    const answer = timed(() => {
      last = checker.begin(now);
    });
    let steps = 0;
    let longest = 0;
    const rest = timed(() => {
      for (; last.again.length > 0; steps++) {
        const { clock } = timed(() => {
          last = checker.goOn() ?? last;
        });
        longest = Math.max(longest, clock);
      }
    });
    if (n >= warmUp) taken.push({ answer, readings: { ...rest, steps, longest } });
  }
  const middle = (of: (one: Rechecked) => number) => median(taken.map(of));
  return {
    answer: {
      clock: middle(({ answer }) => answer.clock),
      cpu: middle(({ answer }) => answer.cpu),
    },
    readings: {
      clock: middle(({ readings }) => readings.clock),
      cpu: middle(({ readings }) => readings.cpu),
      steps: middle(({ readings }) => readings.steps),
      longest: middle(({ readings }) => readings.longest),
    },
  };
}

const NOTHING: CheckResult = {
  machine: "",
  roles: [],
  findings: [],
  summary: { contradictions: 0, warnings: 0, notes: 0 },
};

function timed(work: () => void): Taken {
  const used = process.cpuUsage();
  const began = performance.now();
  work();
  const clock = performance.now() - began;
  const { user, system } = process.cpuUsage(used);
  return { clock, cpu: (user + system) / 1000 };
}

export default measured;
