import { isFixedProbe } from "../../job/index.ts";
import type { Candidate } from "./candidate.ts";

/** Members of a spot that are named one by one, at most. */
const MOST_NAMED = 3;

const placeOf = (ref: string): string =>
  isFixedProbe(ref)
    ? { "battery+": "battery plus", "battery-": "battery minus", chassis: "the chassis" }[ref]
    : ref;

/** What a spot is in a mechanic's words; `isPartial`: a bad joint and not an open, a leak and no short. */
export function faultWords(candidate: Candidate, isPartial: boolean): string {
  const { mode, members, between, to, by, law } = candidate;
  const [one] = members;
  if (mode === "open" && members.length === 1 && law === "source")
    return isPartial ? `a bad joint in ${one}` : `${one} dead`;
  if (mode === "open" && members.length === 1 && (between === null || law !== null))
    return isPartial ? `a bad joint in ${one}` : `${one} open`;
  if (mode === "open" && between) {
    const what = isPartial ? "a bad joint" : "an open";
    const line = `${what} between ${placeOf(between[0])} and ${placeOf(between[1])}${byWayOf(members)}`;
    return by === null ? line : `${line} in the coil circuit of ${by}`;
  }
  if (between && to !== null) {
    const touches = isPartial ? "leaking to" : "touching";
    const target =
      mode === "grounded" ? "ground" : mode === "shorted-to-supply" ? "a feed" : placeOf(to);
    return `the line at ${placeOf(between[0])} ${touches} ${target}`;
  }
  if (law === "source") return mode === "high-resistance" ? `${one} flat or weak` : `${one} dead`;
  switch (mode) {
    case "stuck-open":
      if (law === "contact") return isPartial ? `a bad contact in ${one}` : `${one} not closing`;
      return law === "relay-contact" ? `${one} not pulling in` : `${one} not switching`;
    case "stuck-closed":
      if (law === "contact") return isPartial ? `${one} leaking` : `${one} not opening`;
      return law === "relay-contact" ? `${one} stuck pulled in` : `${one} switching on by itself`;
    case "shorted":
      return isPartial ? `${one} partly shorted` : `${one} shorted`;
    default:
      return `${one} ${mode}`;
  }
}

/** ` (W2, F1, W3)`: what is to be looked at on the way. */
function byWayOf(members: readonly string[]): string {
  if (members.length === 0) return "";
  const named = members.slice(0, MOST_NAMED).join(", ");
  const more = members.length - MOST_NAMED;
  return more > 0 ? ` (${named} and ${more} more)` : ` (${named})`;
}
