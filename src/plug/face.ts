import type { Cavity, PlugKey, PlugOutline } from "../job/index.ts";
import { type Arrangement, placesOf } from "./arrangement.ts";
import { type MarkStyle, marksOf } from "./marks.ts";
import { inMarkOrder, type MarkOrder } from "./order.ts";
import { type Edge, keyOn, outlineAround } from "./outline.ts";

/** All that the user says when drawing a face by arrangement. */
export interface FacePlan {
  readonly arrangement: Arrangement;
  readonly marks: MarkStyle;
  readonly order: MarkOrder;
  readonly housing: "rectangle" | "circle";
  readonly latch: Edge | null;
  readonly key: Edge | null;
}

/** The drawn part of a plug. */
export interface Face {
  readonly cavities: Cavity[];
  readonly outline: PlugOutline;
  readonly keys: PlugKey[];
}

/** The cavities of a plan in the order of their marks; lengths rounded to a thousandth of a millimetre. */
export function cavitiesOf(plan: Pick<FacePlan, "arrangement" | "marks" | "order">): Cavity[] {
  const places = inMarkOrder(plan.arrangement, placesOf(plan.arrangement), plan.order);
  const marks = marksOf(plan.marks, places.length);
  return places.map(({ at, opening }, index) => ({
    mark: marks[index] ?? "",
    at: [thousandth(at[0]), thousandth(at[1])],
    ...(opening ? { opening } : {}),
  }));
}

export function faceOf(plan: FacePlan): Face {
  const cavities = cavitiesOf(plan);
  const outline = outlineAround(cavities, plan.housing);
  const keys: PlugKey[] = [];
  if (plan.latch) keys.push(keyOn(outline, "latch", plan.latch));
  if (plan.key) keys.push(keyOn(outline, "key", plan.key));
  return { cavities, outline, keys };
}

/** Millimetres as a file keeps them. Adding 0 turns -0 into 0, which JSON cannot tell apart. */
export const thousandth = (mm: number) => Math.round(mm * 1000) / 1000 + 0;
