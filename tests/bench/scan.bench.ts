import {
  asPart,
  type CleanStep,
  clean,
  cleaned,
  finished,
  followedLines,
  type Grey,
  greyFrom,
  type LineContext,
  NOT_SQUARED,
  netAt,
  netsOf,
  type PreparedPage,
  preparePage,
  proposeCorners,
  proposedCorners,
  type Quad,
  type Rgba,
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

/** The squared picture is nobody else's: it is cleaned in place. */
function* squaredAndCleaned(photo: Rgba, corners: Quad | null): Sliced<Rgba | null> {
  const squared = yield* asPart(squareUp(photo, { ...NOT_SQUARED, corners }), 0, 0.3);
  if (squared) yield* asPart(clean(squared, CLEANING), 0.3, 1);
  return squared;
}

const both = (one: LibraryStep, other: LibraryStep): LibraryStep => ({
  run: () => {
    one.run();
    other.run();
  },
  close: () => {
    one.close();
    other.close();
  },
});

function* readyForClicks(
  scan: Grey,
  context: LineContext,
  terminals: BenchPage["terminals"],
): Sliced<Traced> {
  const page = yield* asPart(preparePage(scan), 0, 0.7);
  return yield* asPart(traceLines(page, context, terminals, "all"), 0.7, 1);
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
  const withTerminals = () => {
    const lines = finished(followedLines(page, context, sheet.terminals));
    finished(netsOf(lines, "with-terminals"));
    return lines;
  };
  const [x, y] = Object.values(sheet.terminals)[0] ?? [0, 0];
  const list = <T>(step: Omit<Step, "outcome"> & { outcome: (result: T) => string }) =>
    step as unknown as Step;
  return [
    list({
      what: "corners of the page proposed",
      work: () => proposedCorners(photo),
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
      what: "squared up and then cleaned, as a worker does it",
      work: () => squaredAndCleaned(sheet.photo, corners),
      library: (library) =>
        both(library.warp(sheet.photo, corners as Quad), library.clean(sheet.scan)),
      does: "those of both",
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
      what: "lines that no terminal is on, once those are told, while nobody waits",
      work: () => netsOf(withTerminals(), "all"),
      library: (library) => library.outlines(scan),
      does: "the same",
      outcome: ({ nets }: Traced) => `${nets.length} nets`,
    }),
    list({
      what: "made ready and every line followed, before the first click",
      work: () => readyForClicks(scan, context, sheet.terminals),
      library: (library) => library.outlines(scan),
      does: "the same",
      outcome: ({ nets }: Traced) => `${nets.length} nets`,
    }),
    list({
      what: "a click, the first one too: the net under it",
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
      work: () => findSymbols(page, { examples: [] }),
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

/** Megabytes in arrays of pixels while work goes on, looked at between its slices, more than before it. */
interface Memory {
  /** At most; what the collector has yet to take is among them. */
  readonly most: number;
  /** In its result, for as long as that is kept. */
  readonly kept: number;
}

function memoryOf<T>(work: Sliced<T>): { readonly result: T; readonly memory: Memory } {
  const { gc } = globalThis;
  gc?.();
  const before = process.memoryUsage().arrayBuffers;
  const more = () => (process.memoryUsage().arrayBuffers - before) / 1e6;
  let most = 0;
  for (;;) {
    const slice = work.next();
    most = Math.max(most, more());
    if (!slice.done) continue;
    gc?.();
    return { result: slice.value, memory: { most, kept: more() } };
  }
}

/** Milliseconds. */
interface Times {
  readonly all: number;
  /** For so long the thread of the work heard nothing. */
  readonly longestSlice: number;
}

function timed(work: Sliced<unknown>): Times {
  const began = performance.now();
  let [last, longestSlice] = [began, 0];
  for (let isDone = false; !isDone; ) {
    isDone = work.next().done === true;
    const now = performance.now();
    longestSlice = Math.max(longestSlice, now - last);
    last = now;
  }
  return { all: last - began, longestSlice };
}

/** What takes longer is not measured again: nothing new would come of it. Milliseconds. */
const LONG = 10_000;

/** Ours and the library's in turn, so that neither has the machine to itself. */
function inTurn(step: Step, library: LibraryStep) {
  const turn = () => ({
    ours: timed(step.work()),
    theirs: timed(whole(() => library.run())),
  });
  const warmUp = turn();
  const turns = warmUp.ours.all > LONG ? [warmUp] : Array.from({ length: RUNS }, turn);
  library.close();
  return {
    ours: median(turns.map(({ ours }) => ours.all)),
    longestSlice: median(turns.map(({ ours }) => ours.longestSlice)),
    theirs: median(turns.map(({ theirs }) => theirs.all)),
  };
}

const milliseconds = (ms: number) => `${ms < 10 ? ms.toFixed(2) : ms.toFixed(0)} ms`;

const bench: Bench = {
  title: "The scan desk on a sheet of 17 megapixels",
  about:
    "An A3 sheet at 300 dots an inch, 4961 by 3508 pixels, made by rule with boxes, words and nets that are known; " +
    "as a soft, grainy, shaded scan, and as a photo askew on a table. Each step is held against what comes nearest to it " +
    "in OpenCV 4.5, compiled to WebAssembly (@techstark/opencv-js), on the same pixels in the same process, the two in turn. " +
    "What the library's steps leave out stands beside them. A click has to answer within 100 ms, making ready within 1.5 s, " +
    "tracing all within 2 s. Slice: the longest time for which a step heard nothing, neither a click nor that it was called " +
    "off; 100 ms at most. Takes: the most that arrays of pixels took between two slices of the step, more than before it, the " +
    "picture itself left out; keeps: what its result goes on taking. Both before the library was loaded.",
  async run(): Promise<Grid> {
    const sheet = await benchPage(DPI);
    const steps = stepsOf(sheet);
    const outcomes = steps.map((step) => {
      const { result, memory } = memoryOf(step.work());
      return { memory, outcome: step.outcome(result as never) };
    });
    const library = await openImageLibrary();
    const lines = steps.map((step, n) => {
      const { ours, longestSlice, theirs } = inTurn(step, step.library(library));
      const { memory, outcome = "" } = outcomes[n] ?? {};
      return [
        step.what,
        milliseconds(ours),
        milliseconds(longestSlice),
        `${(ours / theirs).toFixed(2)} ×`,
        milliseconds(theirs),
        step.does,
        `${memory?.most.toFixed(0)} MB`,
        `${memory?.kept.toFixed(0)} MB`,
        outcome,
      ];
    });
    const columns = [
      "step",
      "median",
      "slice",
      "against",
      library.name,
      "its steps",
      "takes",
      "keeps",
      "outcome",
    ];
    return { columns, lines };
  },
};

export default bench;
