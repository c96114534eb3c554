import type { PartOf } from "../job/index.ts";

/** The main chassis; a ground with no place, on the frame, or on the chassis is this. */
export const CHASSIS_PLACE = "chassis";

/** Ground parts with equal keys are one point of the machine. */
export function chassisPlace(part: PartOf<"ground">): string {
  const place = (part.place ?? "").trim().toLowerCase();
  return place === "" || place === "frame" ? CHASSIS_PLACE : place;
}

/** Page ends with equal keys are one line going on; null where nothing is written on it. */
export function pageKey(part: PartOf<"offpage">): string | null {
  const label = (part.label ?? "").trim().toLowerCase();
  return label === "" ? null : label;
}
