import type { NetDifference } from "../../../../session/index.ts";

/**
 * What the list's head says. Kept to two lines, for which the head has room: what is under it is pressed.
 * `isAnew`: the lines are of an older drawing, and what they lack of this one is not known yet.
 */
export function netsSummary(
  { otherwise, same }: Pick<NetDifference, "otherwise" | "same">,
  proposed: number,
  left: number,
  isAnew: boolean,
): string {
  const toSee = proposed > 0 ? `${lines(proposed)} to look at.` : "";
  const aside = left > 0 ? `${lines(left)} left aside.` : "";
  if (isAnew) return sentences(toSee || aside, "Following the lines anew…");
  const drawn = same > 0 ? `${lines(same)} drawn as on the picture.` : "";
  const found = toSee || aside || "Nothing is missing.";
  const others = otherwise.length === 1 ? "1 place is" : `${otherwise.length} places are`;
  if (otherwise.length > 0) return sentences(found, `${others} drawn otherwise.`, drawn);
  if (proposed + left + same > 0) return sentences(found, drawn);
  return "No line joins two placed pins. Place the parts first: their pins are what lines are followed between.";
}

const lines = (count: number) => `${count} ${count === 1 ? "line" : "lines"}`;

const sentences = (...all: readonly string[]) => all.filter((one) => one !== "").join(" ");
