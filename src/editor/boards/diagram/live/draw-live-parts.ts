import type { Point } from "../../../../base/index.ts";
import {
  elementsOf,
  type Law,
  type LiveState,
  type PartState,
  pinsOf,
  restPosition,
  toSheet,
} from "../../../../circuit/index.ts";
import type { Part } from "../../../../job/index.ts";
import { type PartShape, partWords, unitOf } from "../../../../session/index.ts";
import { drawPartHalos, drawParts } from "../drawing/draw-parts.ts";
import { type Ink, trace, type Words, write } from "../drawing/ink.ts";
import { switchStanding } from "./live-shape.ts";

const laws = new WeakMap<Part, ReadonlySet<Law["is"]>>();

/** How a part's pins are joined, by the names of the laws: which voltage it is for plays no part. */
function lawsOf(part: Part): ReadonlySet<Law["is"]> {
  const known = laws.get(part);
  if (known) return known;
  const found = new Set(elementsOf(part, 24).map(({ law }) => law.is));
  laws.set(part, found);
  return found;
}

/** Parts as they are now, over their symbols: contacts moved, lamps lit, fuses blown, plugs pulled. */
export function drawLiveParts(ink: Ink, shapes: readonly PartShape[], live: LiveState): void {
  for (const shape of shapes) {
    const state = live.parts[shape.part.id];
    if (state) drawLivePart(ink, shape, state);
  }
}

/** Parts smaller than this on the screen are too many for words, pixels. */
const LEAST_WITH_WORD = 15;

/** A word for each part that is not just at rest; over everything, so that no chevron runs through it. */
export function drawLiveWords(ink: Ink, shapes: readonly PartShape[], live: LiveState): void {
  for (const shape of shapes) {
    const { part, box } = shape;
    const state = live.parts[part.id];
    const large = Math.max(box.right - box.left, box.bottom - box.top) * ink.camera.zoom;
    if (large < LEAST_WITH_WORD) continue;
    if (state && isWorthAWord(part, state)) {
      drawWord(ink, shape, state.undecided ? "?" : partWords(part, state), state);
    }
  }
}

function drawLivePart(ink: Ink, shape: PartShape, state: PartState): void {
  const { part } = shape;
  const is = lawsOf(part);
  if (part.kind === "switch") drawStanding(ink, shape, state);
  if (state.on && is.has("coil")) drawPulledIn(ink, shape);
  if (state.on && (is.has("led") || (is.has("load") && part.kind === "lamp"))) {
    drawLit(ink, shape, state.share);
  } else if (state.on && is.has("load") && part.kind !== "module") drawAtWork(ink, shape);
  if (state.blown) drawBreak(ink, shape);
  if (state.removed || state.unplugged) drawAway(ink, shape);
  if (state.oscillates) drawChatter(ink, shape);
}

/** At rest and doing nothing is what the symbol says already. */
function isWorthAWord(part: Part, state: PartState): boolean {
  if (state.blown || state.removed || state.unplugged || state.oscillates) return true;
  if (state.undecided) return true;
  if (part.kind === "switch") return state.position !== restPosition(part);
  return state.on;
}

/** The corners of a part's own box, grown by `by` symbol units, on the sheet. */
function cornersOf({ part, local }: PartShape, by: number): Point[] {
  const { left, top, right, bottom } = local;
  const corners: Point[] = [
    [left - by, top - by],
    [right + by, top - by],
    [right + by, bottom + by],
    [left - by, bottom + by],
  ];
  return corners.map((corner) => toSheet(part, corner));
}

function fillBox({ canvas, palette }: Ink, shape: PartShape, by: number, alpha: number): void {
  canvas.beginPath();
  trace(canvas, cornersOf(shape, by));
  canvas.closePath();
  canvas.globalAlpha = alpha;
  canvas.fillStyle = palette.paperRaised;
  canvas.fill();
  canvas.globalAlpha = 1;
}

/** The contacts as they stand, over paper where they lie at rest; at rest the symbol will do. */
function drawStanding(ink: Ink, shape: PartShape, state: PartState): void {
  const { part } = shape;
  if (part.kind !== "switch" || state.position === undefined) return;
  if (state.position === restPosition(part)) return;
  const stood = switchStanding(part, state.position);
  // A halo lets a little through: two of them do not.
  drawPartHalos(ink, [shape]);
  drawPartHalos(ink, [shape, stood]);
  drawParts(ink, [stood]);
}

/** Where a contact's pin ends inside the symbol: this far from the pin, symbol units. */
const CONTACT_REACH = 1.6;

const inner = ([x, y]: Point): Point => [x, y - Math.sign(y) * CONTACT_REACH];

/** The arms go over to the working contacts, and the coil is filled. */
function drawPulledIn(ink: Ink, shape: PartShape): void {
  const { canvas, palette } = ink;
  const { part } = shape;
  const places = new Map(pinsOf(part).map(({ id, at }) => [id, at]));
  const at = (pin: string): Point => toSheet(part, inner(places.get(pin) ?? [0, 0]));
  const width = Math.max(unitOf(part) * 0.2, 1.6 / ink.camera.zoom);
  const stroke = (from: Point, to: Point, colour: string, wide: number) => {
    canvas.beginPath();
    canvas.moveTo(...(from as [number, number]));
    canvas.lineTo(...(to as [number, number]));
    canvas.strokeStyle = colour;
    canvas.lineWidth = wide;
    canvas.stroke();
  };
  const elements = elementsOf(part, 24);
  for (const { a, b, law } of elements) {
    if (law.is !== "relay-contact" || law.closedWhen !== "rested") continue;
    stroke(at(a), at(b), palette.paperRaised, width * 4.5);
  }
  for (const { a, b, law } of elements) {
    if (law.is === "relay-contact") {
      if (law.closedWhen === "pulled") stroke(at(a), at(b), palette.ink, width * 2.2);
    } else if (law.is === "coil") {
      const [one, two] = [places.get(a), places.get(b)];
      if (!one || !two) continue;
      const middle: Point = [(one[0] + two[0]) / 2, (one[1] + two[1]) / 2];
      stroke(
        toSheet(part, [middle[0] - 0.55, middle[1]]),
        toSheet(part, [middle[0] + 0.55, middle[1]]),
        palette.ink,
        unitOf(part) * 1.2,
      );
    }
  }
}

/** Rays as long as the lamp is bright, and the glass filled with light. */
function drawLit(ink: Ink, shape: PartShape, share: number): void {
  const { canvas, palette } = ink;
  const { part } = shape;
  const unit = unitOf(part);
  const bright = Math.max(0.15, Math.min(1, share ** 2));
  const [x, y] = part.at;
  canvas.globalAlpha = 0.25 + 0.65 * bright;
  canvas.fillStyle = palette.lit;
  canvas.beginPath();
  canvas.arc(x, y, unit * 1.55, 0, 2 * Math.PI);
  canvas.fill();
  canvas.globalAlpha = 1;
  drawParts(ink, [shape]);
  canvas.strokeStyle = palette.ink;
  canvas.lineWidth = Math.max(unit * 0.28, 1.8 / ink.camera.zoom);
  canvas.beginPath();
  for (let ray = 0; ray < 8; ray++) {
    const angle = (ray * Math.PI) / 4 + Math.PI / 8;
    const from = unit * 2.1;
    const to = from + unit * (0.5 + 0.9 * bright);
    canvas.moveTo(x + from * Math.cos(angle), y + from * Math.sin(angle));
    canvas.lineTo(x + to * Math.cos(angle), y + to * Math.sin(angle));
  }
  canvas.stroke();
}

/** Heavier strokes, and strokes of movement on both sides of the body. */
function drawAtWork(ink: Ink, shape: PartShape): void {
  const { canvas, palette } = ink;
  const { part } = shape;
  const unit = unitOf(part);
  canvas.save();
  canvas.shadowColor = "transparent";
  for (const by of [-0.09, 0.09]) {
    canvas.save();
    canvas.translate(by * unit, by * unit);
    drawParts(ink, [shape]);
    canvas.restore();
  }
  canvas.strokeStyle = palette.ink;
  canvas.lineWidth = Math.max(unit * 0.26, 1.8 / ink.camera.zoom);
  canvas.beginPath();
  for (const side of [-1, 1]) {
    for (const [out, half] of [
      [2.2, 0.9],
      [2.9, 0.5],
    ] as const) {
      const from = toSheet(part, [-half, side * out]);
      const to = toSheet(part, [half, side * out]);
      canvas.moveTo(from[0], from[1]);
      canvas.lineTo(to[0], to[1]);
    }
  }
  canvas.stroke();
  canvas.restore();
}

/** A blown fuse: its middle gone, and crossed out. */
function drawBreak(ink: Ink, shape: PartShape): void {
  const { canvas, palette } = ink;
  const { part } = shape;
  const unit = unitOf(part);
  const [x, y] = part.at;
  canvas.fillStyle = palette.paperRaised;
  canvas.beginPath();
  canvas.arc(x, y, unit * 1.1, 0, 2 * Math.PI);
  canvas.fill();
  canvas.strokeStyle = palette.contradiction;
  canvas.lineWidth = Math.max(unit * 0.4, 2.4 / ink.camera.zoom);
  const reach = Math.max(unit * 0.9, 5 / ink.camera.zoom);
  canvas.beginPath();
  canvas.moveTo(x - reach, y - reach);
  canvas.lineTo(x + reach, y + reach);
  canvas.moveTo(x - reach, y + reach);
  canvas.lineTo(x + reach, y - reach);
  canvas.stroke();
}

/** What is taken out or unplugged fades into the paper, with its place outlined. */
function drawAway(ink: Ink, shape: PartShape): void {
  const { canvas, palette, camera } = ink;
  fillBox(ink, shape, 0.2, 0.72);
  canvas.strokeStyle = palette.ink;
  canvas.lineWidth = 2 / camera.zoom;
  canvas.setLineDash([8 / camera.zoom, 5 / camera.zoom]);
  canvas.beginPath();
  trace(canvas, cornersOf(shape, 0.3));
  canvas.closePath();
  canvas.stroke();
  canvas.setLineDash([]);
  // Every pin is parted from its wire.
  canvas.fillStyle = palette.paperRaised;
  canvas.lineWidth = 1.6 / camera.zoom;
  for (const { at } of shape.pins) {
    canvas.beginPath();
    canvas.arc(at[0], at[1], Math.max(4 / camera.zoom, unitOf(shape.part) * 0.45), 0, 2 * Math.PI);
    canvas.fill();
    canvas.stroke();
  }
}

function drawChatter(ink: Ink, shape: PartShape): void {
  const { canvas, palette, camera } = ink;
  const { left, right, top } = shape.box;
  const step = (right - left) / 6;
  const y = top - 6 / camera.zoom;
  canvas.strokeStyle = palette.contradiction;
  canvas.lineWidth = 2.4 / camera.zoom;
  canvas.beginPath();
  for (let n = 0; n <= 6; n++) {
    const rise = n % 2 === 0 ? 0 : -step * 0.8;
    if (n === 0) canvas.moveTo(left, y);
    else canvas.lineTo(left + n * step, y + rise);
  }
  canvas.stroke();
}

/**
 * As a line of the part's own caption: under it, to the right of what stands; under what lies, or
 * beside it where wires leave downwards. Inside a module there is room in its middle.
 */
function drawWord(ink: Ink, { part, box, pins }: PartShape, text: string, state: PartState): void {
  const unit = unitOf(part);
  const size = Math.max(1.5 * unit, 11 / ink.camera.zoom);
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const wide = box.right - box.left >= box.bottom - box.top;
  const below = pins.some(({ out }) => out?.[1] === 1);
  const spot: Pick<Words, "at" | "align" | "baseline"> =
    part.kind === "module"
      ? { at: [x, y], align: "center" }
      : !wide
        ? { at: [box.right + unit * 0.7, y + Math.max(2.7 * unit, size * 0.6)], align: "left" }
        : below
          ? { at: [box.right + size * 0.5, y], align: "left" }
          : { at: [x, box.bottom + size * 0.5], align: "center", baseline: "top" };
  const loud = state.blown || state.oscillates;
  const colour = loud ? ink.palette.contradiction : ink.palette.ink;
  write(ink, { text, size, bold: true, colour, ...spot });
}
