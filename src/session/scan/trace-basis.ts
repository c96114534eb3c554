import type { Box, Point } from "../../base/index.ts";
import type { Id, Job, LineAnswer } from "../../job/index.ts";
import type { PartShape } from "../diagram/part-shape.ts";
import { sceneOf } from "../diagram/scene.ts";
import type { TraceAsk } from "./trace-port.ts";

/** What a picture was followed with, besides its pixels: the parts on it, the answers, the words. */
export interface TraceBasis {
  readonly sheet: Id;
  readonly file: string;
  readonly parts: readonly PartShape[];
  readonly answers: readonly LineAnswer[];
  readonly words: readonly Box[];
}

const NO_ANSWERS: readonly LineAnswer[] = [];

/** Null where the sheet has no picture. `job`: as the boards show it. */
export function basisOf(job: Job, id: Id, words: readonly Box[]): TraceBasis | null {
  const sheet = job.diagram.sheets.find((one) => one.id === id);
  if (!sheet?.image) return null;
  const { parts } = sceneOf(job.diagram, id);
  return { sheet: id, file: sheet.image.file, parts, answers: sheet.answers ?? NO_ANSWERS, words };
}

/**
 * Every pin is a place where lines may end, and no line is followed inside a part. Splices are neither:
 * they lie on lines, and whether those meet there is for the picture to say.
 */
export function askOf({ parts, answers, words }: TraceBasis): TraceAsk {
  const shapes = parts.filter(({ part }) => part.kind !== "splice");
  const spots = shapes.flatMap(({ pins }) => pins);
  return {
    terminals: Object.fromEntries(spots.map(({ ref, at }) => [ref, at])),
    parts: shapes.map(({ box }) => box),
    words,
    answers,
  };
}

/** Whether lines followed with the one are those that the other would give. */
export const isSameBasis = (a: TraceBasis, b: TraceBasis): boolean =>
  a === b || (holdsWith(a, b, new Set()) && a.parts.length === b.parts.length);

/**
 * Whether what was followed with `then` still holds for what it says of the pins that it knew: nothing
 * of it has changed, and what came since is only what was drawn along its own lines (`made`: ids).
 */
export function holdsWith(then: TraceBasis, now: TraceBasis, made: ReadonlySet<Id>): boolean {
  if (then.sheet !== now.sheet || then.file !== now.file) return false;
  if (then.words !== now.words || !sameAnswers(then.answers, now.answers)) return false;
  if (then.parts === now.parts) return true;
  const before = new Map(then.parts.map((shape) => [shape.part.id, shape]));
  for (const shape of now.parts) {
    const was = before.get(shape.part.id);
    if (!was) {
      if (!made.has(shape.part.id)) return false;
    } else if (!sameShape(was, shape)) return false;
    before.delete(shape.part.id);
  }
  return before.size === 0;
}

const samePoint = (a: Point, b: Point) => a[0] === b[0] && a[1] === b[1];

function sameShape(a: PartShape, b: PartShape): boolean {
  if (a === b) return true;
  return (
    a.box.left === b.box.left &&
    a.box.top === b.box.top &&
    a.box.right === b.box.right &&
    a.box.bottom === b.box.bottom &&
    a.pins.length === b.pins.length &&
    a.pins.every((spot, place) => {
      const other = b.pins[place];
      return other?.ref === spot.ref && samePoint(other.at, spot.at);
    })
  );
}

const sameAnswers = (a: readonly LineAnswer[], b: readonly LineAnswer[]) =>
  a === b ||
  (a.length === b.length &&
    a.every((one, place) => {
      const other = b[place];
      return (
        other !== undefined &&
        other.joined === one.joined &&
        other.stray === one.stray &&
        samePoint(other.at, one.at)
      );
    }));
