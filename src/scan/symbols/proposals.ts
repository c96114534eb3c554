import { add, type Box, type Point, scale, turn as turned } from "../../base/index.ts";
import type { Ranked } from "./apart.ts";
import type { Candidate } from "./candidate.ts";
import { unitOfPose } from "./fit.ts";
import type { ModuleFind } from "./modules.ts";
import { matrixOf, placed, placedBox } from "./pose.ts";
import { LINKED, type RelayFind } from "./relays.ts";
import { sampledOf } from "./sampled.ts";
import { type SymbolPage, toPicturePoint } from "./symbol-page.ts";
import type { EdgePin, QuarterTurn } from "./symbol-proposal.ts";

const inPicture = (page: SymbolPage, { left, top, right, bottom }: Box): Box => {
  const [a, b] = [toPicturePoint(page, [left, top]), toPicturePoint(page, [right, bottom])];
  return { left: a[0], top: a[1], right: b[0], bottom: b[1] };
};

export function symbolFound(page: SymbolPage, candidate: Candidate): Ranked {
  const { symbol, fit, confidence, example } = candidate;
  const matrix = matrixOf(fit.pose);
  const there = (at: Point) => toPicturePoint(page, at);
  return {
    proposal: {
      kind: symbol.kind,
      box: inPicture(page, placedBox(matrix, symbol.body)),
      at: there([fit.pose.x, fit.pose.y]),
      turn: fit.pose.turn,
      ...(fit.pose.isMirrored && symbol.mirror === "other" ? { isMirrored: true as const } : {}),
      ...(symbol.isClosed ? { isClosed: true as const } : {}),
      unit: unitOfPose(symbol, fit.pose) * page.coarseness,
      confidence,
      ends: symbol.ends.map(({ at }) => there(placed(matrix, at))),
      others: [],
      ...(example === undefined ? {} : { example }),
    },
    closeness: confidence - fit.off - fit.clutter + (example === undefined ? 0 : SHOWN),
    rank: rankOf(page, candidate),
    strokes: symbol.strokes.length,
  };
}

/** What the user has shown stands before what the trade draws, where both are the same kind. */
const SHOWN = 0.5;

function rankOf(page: SymbolPage, { symbol, fit, confidence, example }: Candidate): number {
  const unit = Math.sqrt(fit.pose.along * fit.pose.across);
  const shown = confidence * Math.sqrt((sampledOf(symbol).length * unit) / page.line);
  return example === undefined ? shown : 1.15 * shown;
}

/** Where the relay's own drawing has coil and contact, units along it from its middle. */
const COIL = -3;
const CONTACT = 2;

export function relayFound(page: SymbolPage, { coil, contact, link }: RelayFind): Ranked {
  const [from, to] = [coil.fit.pose, contact.fit.pose];
  const away: Point = [to.x - from.x, to.y - from.y];
  const isLevel = Math.abs(away[0]) > Math.abs(away[1]);
  const quarter = (isLevel ? (away[0] > 0 ? 0 : 180) : away[1] > 0 ? 90 : 270) as QuarterTurn;
  const unit = Math.abs(isLevel ? away[0] : away[1]) / (CONTACT - COIL);
  const at = add([from.x, from.y], scale(turned([-COIL, 0], quarter), unit));
  const boxes = [coil, contact].map(({ symbol, fit }) =>
    placedBox(matrixOf(fit.pose), symbol.body),
  ) as [Box, Box];
  const box = {
    left: Math.min(boxes[0].left, boxes[1].left),
    top: Math.min(boxes[0].top, boxes[1].top),
    right: Math.max(boxes[0].right, boxes[1].right),
    bottom: Math.max(boxes[0].bottom, boxes[1].bottom),
  };
  // Drawn with the common line below and the resting throw beside the coil.
  const isMirrored =
    to.turn !== (quarter + 270) % 360 || (contact.symbol.ends.length > 2 && to.isMirrored);
  const sure = Math.min(1, 0.9 + (link - LINKED) / 0.5);
  const ends = [coil, contact].flatMap(({ symbol, fit }) =>
    symbol.ends.map((end) => toPicturePoint(page, placed(matrixOf(fit.pose), end.at))),
  );
  const confidence = Math.min(coil.confidence, contact.confidence) * sure;
  return {
    proposal: {
      kind: "relay",
      box: inPicture(page, box),
      at: toPicturePoint(page, at),
      turn: quarter,
      ...(isMirrored ? { isMirrored: true as const } : {}),
      unit: unit * page.coarseness,
      confidence: isMirrored ? Math.min(confidence, MIRRORED) : confidence,
      ends,
      others: [],
    },
    closeness: confidence - coil.fit.off - contact.fit.off,
    rank: 1.2 * (rankOf(page, coil) + rankOf(page, contact)) * sure,
    strokes: coil.symbol.strokes.length + contact.symbol.strokes.length,
  };
}

/** A part drawn the other way round can't be placed so that every pin meets its line. */
const MIRRORED = 0.75;

/** Lines for which a module's words and pins speak surely. */
const MANY = 4;

export function moduleFound(page: SymbolPage, { corners, pins, border }: ModuleFind): Ranked {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const mean = (a: number | undefined, b: number | undefined) => ((a ?? 0) + (b ?? 0)) / 2;
  const box = inPicture(page, {
    left: mean(xs[0], xs[3]),
    top: mean(ys[0], ys[1]),
    right: mean(xs[1], xs[2]),
    bottom: mean(ys[2], ys[3]),
  });
  const confidence = Math.min(1, 0.35 + (0.65 * Math.min(pins.length, MANY)) / MANY) * border;
  return {
    proposal: {
      kind: "module",
      box,
      at: [(box.left + box.right) / 2, (box.top + box.bottom) / 2],
      turn: 0,
      unit: Math.min(box.right - box.left, box.bottom - box.top) / USUAL_UNITS,
      confidence,
      ends: [],
      pins: inReadingOrder(pins.map(({ at, side }) => ({ at: toPicturePoint(page, at), side }))),
      others: [],
    },
    closeness: confidence,
    rank: confidence,
    strokes: 4,
  };
}

/** A module's shorter side in symbol units, where nothing else says how large symbols are drawn. */
const USUAL_UNITS = 12;

const SIDE_ORDER = ["top", "left", "right", "bottom"] as const;

function inReadingOrder(pins: readonly EdgePin[]): EdgePin[] {
  const along = ({ at, side }: EdgePin) => (side === "top" || side === "bottom" ? at[0] : at[1]);
  return [...pins].sort(
    (a, b) => SIDE_ORDER.indexOf(a.side) - SIDE_ORDER.indexOf(b.side) || along(a) - along(b),
  );
}
