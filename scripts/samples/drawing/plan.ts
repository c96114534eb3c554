import type { Point } from "../../../src/base/index.ts";
import { pinPosition } from "../../../src/circuit/index.ts";
import {
  type Colour,
  type Part,
  type PinRef,
  splitRef,
  type Wire,
} from "../../../src/job/index.ts";
import { cornersOf, type Leg } from "./route.ts";

/** What a draughtsman writes beside a symbol: id and what it is, each on a line of its own. */
export interface Caption {
  readonly lines: readonly string[];
  /** Middle of the first line, pixels from the part's `at`. */
  readonly offset: Point;
  readonly align: "left" | "center" | "right";
}

export interface PlannedPart {
  readonly part: Part;
  readonly caption?: Caption;
}

export interface PlannedWire extends Omit<Wire, "path" | "colour"> {
  readonly number: string;
  readonly colour: Colour;
  readonly legs?: readonly Leg[];
  /** Which leg carries the print, counted from 0 at `from`; the longest one when absent. */
  readonly printOn?: number;
  /** Where on that leg, 0 to 1; the middle when absent. */
  readonly printAt?: number;
  /** Level and to the right of an upright leg that is too short to write along. */
  readonly printBeside?: boolean;
}

/** A sheet as laid out on white paper, before anything has happened to it. */
export interface Plan {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly PlannedPart[];
  readonly wires: readonly PlannedWire[];
}

/** Trade habit, not IEC 60757: base, slash, tracer. */
export const colourMark = ({ base, tracer }: Colour): string =>
  tracer ? `${base}/${tracer}` : base;

export function pinAt(plan: Plan, ref: PinRef): Point {
  const { owner, name } = splitRef(ref);
  const found = plan.parts.find(({ part }) => part.id === owner);
  const at = found && pinPosition(found.part, name);
  if (!at) throw new Error(`no pin ${ref} on the plan`);
  return at;
}

/** The whole line of a wire, ends included. */
export function lineOf(plan: Plan, wire: PlannedWire): readonly Point[] {
  const from = pinAt(plan, wire.from);
  const to = pinAt(plan, wire.to);
  return [from, ...cornersOf(from, to, wire.legs ?? []), to];
}
