import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort, Worker } from "node:worker_threads";
import type { Point } from "../../src/base/index.ts";
import { type Score, scoreOf, sumOf } from "../support/drawn-pages/traced.ts";
import type { Bench, Grid } from "./harness.ts";

/** `PINTRUTH_SEED` starts the seeds elsewhere, `PINTRUTH_PAGES` makes so many times as many pages. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const TIMES = Number(process.env.PINTRUTH_PAGES ?? 1);
/** From a clean print to what is barely legible; see `randomHarm`. */
const LEVELS = [0, 0.3, 0.6, 1];
/** Dots an inch, how many pages, and the columns and rows of their lattices in turn. */
const SCANS: readonly {
  readonly dpi: number;
  readonly pages: number;
  readonly sizes: readonly Point[];
}[] = [
  {
    dpi: 150,
    pages: 20,
    sizes: [
      [24, 18],
      [36, 26],
    ],
  },
  {
    dpi: 300,
    pages: 6,
    sizes: [
      [24, 18],
      [36, 26],
    ],
  },
  { dpi: 600, pages: 2, sizes: [[18, 14]] },
];

interface Page {
  readonly seed: number;
  readonly level: number;
  readonly dpi: number;
  readonly size: Point;
}

interface Found extends Page {
  readonly score: Score;
}

const pages = (): Page[] =>
  LEVELS.flatMap((level) =>
    SCANS.flatMap(({ dpi, pages, sizes }) =>
      Array.from({ length: Math.max(1, Math.round(pages * TIMES)) }, (_, n): Page => {
        return { seed: SEED + n, level, dpi, size: sizes[n % sizes.length] as Point };
      }),
    ),
  );

/** Gives the pages to as many workers as there are cores. */
async function scored(all: readonly Page[]): Promise<readonly Found[]> {
  const found: Found[] = [];
  let next = 0;
  const work = () =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(fileURLToPath(import.meta.url));
      const give = () => {
        const page = all[next++];
        if (page) worker.postMessage(page);
        else resolve(worker.terminate().then(() => undefined));
      };
      worker.on("message", (one: Found) => {
        found.push(one);
        tell(one);
        if (found.length % 25 === 0) console.info(`... ${found.length} of ${all.length} pages`);
        give();
      });
      worker.on("error", reject);
      give();
    });
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return found;
}

/** A page with a wrong join is told by what makes it again. */
function tell({ seed, level, dpi, size, score }: Found) {
  if (score.wrong === 0) return;
  const which = `seed ${seed}, level ${level}, ${dpi} dpi, ${size.join(" by ")}`;
  console.info(`wrong joins on the page of ${which}: ${JSON.stringify(score)}`);
}

if (!isMainThread) {
  parentPort?.on("message", async (page: Page) => {
    const score = await scoreOf(page.seed, page.level, [page.dpi], page.size);
    parentPort?.postMessage({ ...page, score } satisfies Found);
  });
}

const percent = (share: number) => `${(100 * share).toFixed(2)} %`;

/** Pages of one level and resolution, as a line of the table. */
function lineOf(name: readonly string[], found: readonly Found[]): string[] {
  const { right, wrong, missed, questions, wanted } = sumOf(found.map(({ score }) => score));
  return [
    ...name,
    String(found.length),
    String(right + missed),
    String(wrong),
    percent(right / (right + wrong)),
    percent(right / (right + missed)),
    ((20 * questions) / wanted).toFixed(2),
  ];
}

const lineFollowing: Bench = {
  title: "Following lines",
  about:
    "Pages of boxes and nets made, drawn and harmed by code that knows nothing of how lines are followed (`tests/support/drawn-pages`): pairs of terminals that are one net or not, against what is said of them. A page of level 0 is a clean print; at level 1 it may be skewed by 2 degrees, blurred by 1.4 pixels, have noise of 24 grey levels, six tenths of its light gone in a corner, ink faded to grey 110, 1.2 % of it in white spots, and be squeezed through JPEG of quality 40; two of five pages are photos at a slant, which the program squares up itself.",
  async run() {
    const found = await scored(pages());
    const columns = [
      "degradation",
      "dpi",
      "pages",
      "pairs joined in truth",
      "pairs joined wrongly",
      "precision",
      "recall",
      "questions per 20 joins",
    ];
    const lines = LEVELS.flatMap((level) => {
      const of = found.filter((one) => one.level === level);
      return [
        ...SCANS.map(({ dpi }) =>
          lineOf(
            [String(level), String(dpi)],
            of.filter((one) => one.dpi === dpi),
          ),
        ),
        lineOf([String(level), "all"], of),
      ];
    });
    lines.push(lineOf(["all", "all"], found));
    return { columns, lines } satisfies Grid;
  },
};

export default lineFollowing;
