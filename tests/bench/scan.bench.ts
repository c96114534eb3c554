import {
  type CleanStep,
  cleaned,
  finished,
  greyFrom,
  NOT_SQUARED,
  netAt,
  type PreparedPage,
  preparePage,
  proposeCorners,
  type Quad,
  type Sliced,
  squareUp,
  type Traced,
  traceLines,
  USUAL_STEPS,
  wordBoxesOf,
} from "../../src/scan/index.ts";
import { findSymbols } from "../../src/scan/symbols/find-symbols.ts";
import { type Bench, type Grid, median } from "./harness.ts";
import { type BenchPage, benchPage } from "./scan/bench-page.ts";
import { type ImageLibrary, type LibraryStep, openImageLibrary } from "./scan/image-library.ts";

/** `PINTRUTH_DPI` takes a coarser sheet, for a first look. */
const DPI = Number(process.env.PINTRUTH_DPI ?? 300);
const RUNS = 3;

const CLEANING: readonly CleanStep[] = [
  USUAL_STEPS.flatten,
  USUAL_STEPS["black-and-white"],
  USUAL_STEPS.specks,
];

/** One step of ours, and what comes nearest to it in the library. */
interface Step {
  readonly what: string;
  readonly work: () => Sliced<unknown>;
  readonly library: (library: ImageLibrary) => LibraryStep;
  /** The library's steps, in its own words. */
  readonly does: string;
  /** What came out, to show that something did. */
  readonly outcome: (result: never) => string;
}

/** Work that is too short to be cut in slices, as one. */
function* whole<T>(work: () => T): Sliced<T> {
  yield 0;
  return work();
}

function stepsOf(sheet: BenchPage): readonly Step[] {
  const photo = greyFrom(sheet.photo);
  const scan = greyFrom(sheet.scan);
  const corners = proposeCorners(photo)?.corners ?? null;
  const page: PreparedPage = finished(preparePage(scan));
  const context = { parts: sheet.parts, words: [], answers: [] };
  const follow = (which: "all" | "with-terminals") =>
    traceLines(page, context, sheet.terminals, which);
  const all: Traced = finished(follow("all"));
  const [x, y] = Object.values(sheet.terminals)[0] ?? [0, 0];
  const list = <T>(step: Omit<Step, "outcome"> & { outcome: (result: T) => string }) =>
    step as unknown as Step;
  return [
    list({
      what: "corners of the page proposed",
      work: () => whole(() => proposeCorners(photo)),
      library: (library) => library.corners(photo),
      does: "resize, Canny, findContours, approxPolyDP",
      outcome: (found: { confidence: number } | null) =>
        found ? `the page, ${found.confidence.toFixed(2)} sure` : "none",
    }),
    list({
      what: "squared up in colour",
      work: () => squareUp(sheet.photo, { ...NOT_SQUARED, corners }),
      library: (library) => library.warp(sheet.photo, corners as Quad),
      does: "warpPerspective, bilinear",
      outcome: (made: { width: number; height: number }) =>
        `${made.width} by ${made.height} pixels`,
    }),
    list({
      what: "cleaned: shade, black and white, specks",
      work: () => cleaned(sheet.scan, CLEANING),
      library: (library) => library.clean(sheet.scan),
      does: "cvtColor, closing of 41, divide, adaptiveThreshold, connectedComponentsWithStats",
      outcome: () => "",
    }),
    list({
      what: "made ready for following lines",
      work: () => preparePage(scan),
      library: (library) => library.prepare(scan),
      does: "adaptiveThreshold, opening, connectedComponentsWithStats, distanceTransform; it thins nothing",
      outcome: (made: PreparedPage) => `lines ${made.lineWidth.toFixed(1)} pixels wide`,
    }),
    list({
      what: "every net traced from the terminals",
      work: () => follow("with-terminals"),
      library: (library) => library.outlines(scan),
      does: "adaptiveThreshold, connectedComponents, findContours; it follows nothing",
      outcome: ({ nets, questions }: Traced) =>
        told(
          sheet,
          nets.map((net) => net.terminals),
          questions.length,
        ),
    }),
    list({
      what: "first click on a line: all lines of the page followed",
      work: () => follow("all"),
      library: (library) => library.outlines(scan),
      does: "the same",
      outcome: ({ nets }: Traced) => `${nets.length} nets`,
    }),
    list({
      what: "every click after that: the net under it",
      work: () => whole(() => netAt(all, [x, y], 20)),
      library: (library) => library.flood(scan, Math.round(x), Math.round(y)),
      does: "floodFill on ink made before",
      outcome: (net: Traced["nets"][number] | null) => (net ? `${net.runs.length} lines` : "none"),
    }),
    list({
      what: "words found and cut out for the reader",
      work: () => wordBoxesOf(page),
      library: (library) => library.words(scan),
      does: "adaptiveThreshold, dilation of 25 by 5, connectedComponentsWithStats",
      outcome: (found: readonly unknown[]) => `${found.length} words`,
    }),
    list({
      what: "symbols of all kinds looked for",
      work: () => findSymbols(page, { examples: [], known: [] }),
      library: (library) => library.template(scan, Math.round((24 * DPI) / 300)),
      does: "matchTemplate of one symbol, one size and turn, at half the page's size",
      outcome: (found: readonly unknown[]) => `${found.length} proposals`,
    }),
  ];
}

/** Nets as they were drawn, and joins that were not. */
function told(
  { made }: BenchPage,
  said: readonly (readonly string[])[],
  questions: number,
): string {
  const asText = (names: readonly string[]) => [...names].sort().join(" ");
  const known = new Set(made.nets.map((net) => asText(net.terminals.map(({ name }) => name))));
  const right = said.filter((names) => known.has(asText(names))).length;
  return `${right} of ${known.size} nets whole, ${questions} questions`;
}

/** Megabytes at most while work goes on, looked at between its slices. */
interface Memory {
  /** Of the whole process. */
  readonly all: number;
  /** In arrays of pixels, more than before; what the collector has yet to take is among them. */
  readonly more: number;
}

function mostMemory<T>(work: Sliced<T>): { readonly result: T; readonly most: Memory } {
  const { gc } = globalThis;
  gc?.();
  const before = process.memoryUsage().arrayBuffers;
  let [all, more] = [0, 0];
  for (;;) {
    const slice = work.next();
    const { rss, arrayBuffers } = process.memoryUsage();
    all = Math.max(all, rss / 1e6);
    more = Math.max(more, (arrayBuffers - before) / 1e6);
    if (slice.done) return { result: slice.value, most: { all, more } };
  }
}

function timed(work: () => unknown): number {
  const began = performance.now();
  work();
  return performance.now() - began;
}

/** What takes longer is not measured again: nothing new would come of it. Milliseconds. */
const LONG = 10_000;

/** Ours and the library's in turn, so that neither has the machine to itself. */
function inTurn(step: Step, library: LibraryStep) {
  const turn = () => ({
    ours: timed(() => finished(step.work())),
    theirs: timed(() => library.run()),
  });
  const warmUp = turn();
  const turns = warmUp.ours > LONG ? [warmUp] : Array.from({ length: RUNS }, turn);
  library.close();
  const middle = (of: "ours" | "theirs") => median(turns.map((one) => one[of]));
  return { ours: middle("ours"), theirs: middle("theirs") };
}

const milliseconds = (ms: number) => `${ms < 10 ? ms.toFixed(2) : ms.toFixed(0)} ms`;

const bench: Bench = {
  title: "The scan desk on a sheet of 17 megapixels",
  about:
    "An A3 sheet at 300 dots an inch, 4961 by 3508 pixels, made by rule with boxes, words and nets that are known; " +
    "as a soft, grainy, shaded scan, and as a photo askew on a table. Each step is held against what comes nearest to it " +
    "in OpenCV 4.5, compiled to WebAssembly (@techstark/opencv-js), on the same pixels in the same process, the two in turn. " +
    "What the library's steps leave out stands beside them. A click has to answer within 100 ms, making ready within 1.5 s, " +
    "tracing all within 2 s. Takes: the most that arrays of pixels took between two slices of the step, more than before it. " +
    "Rss: the most that the whole process had in use then, both pictures of the sheet and what made them included. Both before " +
    "the library was loaded.",
  async run(): Promise<Grid> {
    const sheet = await benchPage(DPI);
    const steps = stepsOf(sheet);
    const outcomes = steps.map((step) => {
      const { result, most } = mostMemory(step.work());
      return { most, outcome: step.outcome(result as never) };
    });
    const library = await openImageLibrary();
    const lines = steps.map((step, n) => {
      const { ours, theirs } = inTurn(step, step.library(library));
      const { most, outcome = "" } = outcomes[n] ?? {};
      return [
        step.what,
        milliseconds(ours),
        `${(ours / theirs).toFixed(2)} ×`,
        milliseconds(theirs),
        step.does,
        `${most?.more.toFixed(0)} MB`,
        `${most?.all.toFixed(0)} MB`,
        outcome,
      ];
    });
    const columns = [
      "step",
      "median",
      "against",
      library.name,
      "its steps",
      "takes",
      "rss",
      "outcome",
    ];
    return { columns, lines };
  },
};

export default bench;
