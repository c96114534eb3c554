import type { Box } from "../../base/index.ts";
import { CrowdedPage, crowdOn } from "../crowded-page.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { onePerPlace, type Ranked } from "./apart.ts";
import { askewOf } from "./askew.ts";
import { fitByCircles } from "./by-circles.ts";
import { type Fitted, fitByStrokes } from "./by-strokes.ts";
import type { Candidate } from "./candidate.ts";
import { confidenceOf } from "./confidence.ts";
import { CONVENTIONS } from "./conventions/index.ts";
import { examplesAsSymbols } from "./examples.ts";
import { Fitter } from "./fit.ts";
import { holesOf } from "./holes.ts";
import { motorLetterIn } from "./letters.ts";
import { modulesOf } from "./modules.ts";
import { isOnFrame, pageFrame } from "./page-frame.ts";
import { inColumns } from "./plug-columns.ts";
import { matrixOf, placedBox } from "./pose.ts";
import { moduleFound, relayFound, symbolFound } from "./proposals.ts";
import { relaysOf } from "./relays.ts";
import { type SymbolPage, symbolPageOf } from "./symbol-page.ts";
import type { PlacedExample, SymbolProposal } from "./symbol-proposal.ts";
import { Thickets } from "./thickets.ts";
import { mostByTone, toneOf } from "./tone.ts";
import { isWired } from "./wired.ts";

export interface SymbolSearch {
  /** Placed parts: what is printed there is an example of its kind. */
  readonly examples: readonly PlacedExample[];
}

/** Proposals that look less like their kind are not worth showing. */
const LEAST = 0.15;

/** Everything on a page that looks like a symbol, the likeliest first. */
export function* findSymbols(
  prepared: PreparedPage,
  { examples }: SymbolSearch,
): Sliced<SymbolProposal[]> {
  const crowd = yield* asPart(crowdOn(prepared, []), 0, 0.02);
  if (crowd > 0) throw new CrowdedPage(TOO_MANY_STROKES);
  const page = yield* asPart(symbolPageOf(prepared), 0.02, 0.4);
  if (isGrain(page)) throw new CrowdedPage(TOO_MANY_STROKES);
  const askew = askewOf(page.pieces, page.line);
  const thickets = new Thickets(page.line);
  const fitter = new Fitter(page, thickets);
  const shown = examplesAsSymbols(page, askew, examples);
  const exampleOf = new Map(shown.map(({ symbol, example }) => [symbol, example]));
  const symbols = [...CONVENTIONS, ...exampleOf.keys()];
  const byStrokes = fitByStrokes(page, fitter, askew, symbols, thickets);
  const fitted: Fitted[] = yield* asPart(byStrokes, 0.4, 0.9);
  const holes = yield* asPart(holesOf(page), 0.9, 0.92);
  fitted.push(
    ...(yield* asPart(fitByCircles(page, fitter, askew, holes.list, CONVENTIONS), 0.92, 0.94)),
  );
  const frame = pageFrame(page);
  const candidates: Candidate[] = [];
  for (const one of fitted) {
    const isThick = thickets.isNearThick(one.fit.pose);
    const about = { prepared, frame, isThick };
    const candidate = candidateOf(page, about, one, exampleOf.get(one.symbol));
    if (candidate.confidence >= LEAST && isWired(page, one.symbol, one.fit.pose)) {
      candidates.push(candidate);
    }
    // Reading a letter is the longest of it.
    if (one.symbol.letter) yield 0.95;
  }
  yield 0.96;
  const ranked: Ranked[] = [
    ...candidates.map((one) => symbolFound(page, one)),
    ...relaysOf(page, candidates).map((one) => relayFound(page, one)),
  ];
  const modules = (yield* asPart(modulesOf(page, holes, frame), 0.96, 1)).map((one) =>
    moduleFound(page, one),
  );
  return [...inColumns(onePerPlace(ranked)), ...onePerPlace(modules)]
    .filter(({ confidence }) => confidence >= LEAST)
    .sort((a, b) => b.confidence - a.confidence);
}

/** Strokes of a page that are never too many, however small it is. */
const FEW_STROKES = 200;
/** Squares a line width wide for each stroke, at least: a full sheet has some 200, random dots 17. */
const LEAST_ROOM = 35;
const TOO_MANY_STROKES =
  "There is too much grain, tone or printed grid on this picture to look for parts. Crop it to the diagram, or clean it first: black-and-white, then specks.";

/** Every stroke of grain is tried as every symbol, which would take minutes and find nothing. */
function isGrain({ width, height, line, pieces, glyphPieces }: SymbolPage): boolean {
  const strokes = pieces.length + glyphPieces.length;
  return strokes > FEW_STROKES && (width * height) / (line * line) < LEAST_ROOM * strokes;
}

/** What lies on the frame around the drawing, or where much line lies close together, is never sure. */
const DOUBTFUL = 0.45;

interface About {
  readonly prepared: PreparedPage;
  readonly frame: Box | null;
  /** Whether much line lies close together thereabouts. */
  readonly isThick: boolean;
}

function candidateOf(
  page: SymbolPage,
  { prepared, frame, isThick }: About,
  { symbol, fit }: Fitted,
  example?: string,
): Candidate {
  const letter = symbol.letter ? motorLetterIn(page, fit.pose) : 1;
  const looks = confidenceOf(symbol, fit, letter);
  const matrix = matrixOf(fit.pose);
  const body = placedBox(matrix, symbol.body);
  const isDoubtful = isThick || (frame !== null && isOnFrame(page, frame, body));
  const most = looks > DOUBTFUL ? mostByTone(toneOf(prepared, page, symbol, matrix)) : 1;
  const confidence = Math.min(isDoubtful ? DOUBTFUL : most, looks);
  return { symbol, fit, letter, confidence, ...(example === undefined ? {} : { example }) };
}
