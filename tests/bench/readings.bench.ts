import { setUp } from "../../src/circuit/index.ts";
import { cavityRef, type Job, type ReadingQuantity } from "../../src/job/index.ts";
import { expectedAt, movesOf, predict, settle } from "../../src/readings/index.ts";
import { bigJob } from "../support/big-job.ts";
import { type Bench, median, type Row, times } from "./harness.ts";

const SIZES = [200, 1000, 5000] as const;
/** Cavities of one machine whose readings are worked out one after the other. */
const CAVITIES = 24;

const readings: Bench = {
  title: "Predicted readings",
  about:
    "The reference is one state of the same machine put together and solved from nothing. Readings worth taking are worked out for cavities of several plugs one after the other, as the sheet and `predict` do: states that they have in common are solved once. One reading is a drop or volts with its band, in a state that is solved already.",
  async run() {
    const rows: Row[] = [];
    for (const size of SIZES) rows.push(...(await rowsFor(size)));
    return rows;
  },
};

async function rowsFor(size: number): Promise<readonly Row[]> {
  const fresh = () => settle(bigJob(size));
  const machineOf = (job: Job) => job.machines[0]?.id ?? "";
  const cavities = (job: Job) =>
    job.plugs
      .flatMap((plug) => plug.cavities.map(({ mark }) => cavityRef(plug.id, mark)))
      .slice(0, CAVITIES);
  const few = { runs: 5, warmUp: 1 };
  const solve = median(times((job) => setUp(job, machineOf(job), {}), fresh, few));
  const all = median(
    times(
      (job) => cavities(job).map((cavity) => expectedAt(job, machineOf(job), cavity)),
      fresh,
      few,
    ),
  );
  const job = fresh();
  const [module] = job.diagram.parts.filter(({ kind }) => kind === "module");
  const when = { unplugged: [module?.id ?? ""] };
  const at = (quantity: ReadingQuantity, n: number) => ({
    quantity,
    red: cavities(job)[n % CAVITIES] ?? "",
    black: "chassis",
    when,
  });
  let n = 0;
  const one = median(
    times(
      (setup) => predict(job, machineOf(job), setup),
      () => at("volts", n++),
      { runs: 15 },
    ),
  );
  const lamp = median(
    times(
      (setup) => movesOf(job, machineOf(job), { ...setup, with: "test-lamp" }),
      () => at("volts", n++),
      few,
    ),
  );
  const name = `${size.toLocaleString("en")} wires`;
  const row = (what: string, ms: number, note?: string): Row => ({
    what: `${name}: ${what}`,
    median: ms,
    against: "one state solved",
    ratio: ms / solve,
    ...(note === undefined ? {} : { note }),
  });
  return [
    { what: `${name}: one state solved`, median: solve },
    row(
      `readings worth taking at ${CAVITIES} cavities`,
      all,
      `${(all / CAVITIES).toFixed(1)} ms each`,
    ),
    row("one reading with its band", one),
    row("what a test lamp moves", lamp),
  ];
}

export default readings;
