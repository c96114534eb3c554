import type { FittedLine } from "./fitted-line.ts";
import type { GraphNode } from "./net-graph.ts";
import type { ShapedRun } from "./net-shape.ts";
import type { Piece } from "./pieces.ts";

/** A line is level or upright that strays no more from it, from end to end: degrees and line widths. */
const ASKEW = 16;
const DRIFT = 0.8;
/** So few line widths of a line hardly tell its slant: they may drift more. */
const SHORT = 6;
const SHORT_DRIFT = 1.25;
/** In line widths: level pieces on both sides of a node are one line if no farther apart, all of it. */
const ASIDE = 0.75;
const ALL_ASIDE = 1;

/** 0: level, 1: upright. */
type Axis = 0 | 1;

interface AxisPiece {
  readonly piece: Piece;
  readonly axis: Axis;
  /** y of a level one, x of an upright one. */
  place: number;
}

/**
 * Pieces that are nearly level or upright made so, where they are; those that go on straight through a
 * node on one and the same line.
 */
export function levelled(shaped: readonly ShapedRun[], lineWidth: number): ShapedRun[] {
  const found = new Map<Piece, AxisPiece>();
  for (const piece of shaped.flatMap(({ pieces }) => pieces)) {
    const axis = axisOf(piece, lineWidth);
    if (axis === null) continue;
    found.set(piece, { piece, axis, place: piece.line.at[axis === 0 ? 1 : 0] });
  }
  for (const group of throughNodes(shaped, found, lineWidth)) {
    const places = group.map(({ place }) => place);
    if (Math.max(...places) - Math.min(...places) > ALL_ASIDE * lineWidth) continue;
    const all = group.reduce((sum, { piece }) => sum + piece.length, 0);
    const place = group.reduce((sum, one) => sum + (one.place * one.piece.length) / all, 0);
    for (const one of group) one.place = place;
  }
  return shaped.map((run) => ({
    ...run,
    pieces: run.pieces.map((piece) => {
      const on = found.get(piece);
      return on ? { ...piece, line: onAxis(piece.line, on) } : piece;
    }),
  }));
}

function axisOf({ line, length }: Piece, lineWidth: number): Axis | null {
  const [x, y] = [Math.abs(line.along[0]), Math.abs(line.along[1])];
  const slope = Math.min(x, y);
  const drift = length < SHORT * lineWidth ? SHORT_DRIFT : DRIFT;
  if (slope > Math.sin((ASKEW * Math.PI) / 180) || slope * length > drift * lineWidth) return null;
  return x > y ? 0 : 1;
}

function onAxis({ at, along }: FittedLine, { axis, place }: AxisPiece): FittedLine {
  return axis === 0
    ? { at: [at[0], place], along: [Math.sign(along[0]), 0] }
    : { at: [place, at[1]], along: [0, Math.sign(along[1])] };
}

/** Groups of pieces that go on into one another through nodes. */
function throughNodes(
  shaped: readonly ShapedRun[],
  found: ReadonlyMap<Piece, AxisPiece>,
  lineWidth: number,
): AxisPiece[][] {
  const groupOf = new Map<AxisPiece, AxisPiece[]>();
  const at = new Map<GraphNode, AxisPiece[]>();
  for (const { run, pieces } of shaped) {
    for (const [node, piece] of [
      [run.from, pieces[0]],
      [run.to, pieces.at(-1)],
    ] as const) {
      const one = piece && found.get(piece);
      if (!one) continue;
      const known = at.get(node);
      if (known) known.push(one);
      else at.set(node, [one]);
    }
  }
  for (const pieces of at.values()) {
    pieces.forEach((a, n) => {
      for (const b of pieces.slice(n + 1)) {
        if (a === b || a.axis !== b.axis) continue;
        if (Math.abs(a.place - b.place) > ASIDE * lineWidth) continue;
        const [one, other] = [groupOf.get(a) ?? [a], groupOf.get(b) ?? [b]];
        if (one === other) continue;
        const both = [...one, ...other];
        for (const member of both) groupOf.set(member, both);
      }
    });
  }
  return [...new Set(groupOf.values())];
}
