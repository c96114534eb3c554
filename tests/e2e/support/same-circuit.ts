import { distance, type Point } from "../../../src/base/index.ts";
import { pinsOf, toSheet } from "../../../src/circuit/index.ts";
import { type Job, type Part, pinRef } from "../../../src/job/index.ts";

/** Parts that stand for a joint or an end of lines and are no parts of the machine. */
const OF_LINES: readonly Part["kind"][] = ["splice", "offpage", "inline"];

const isPart = ({ kind }: Part) => !OF_LINES.includes(kind);

/** Which part of one drawing is which of another over the same sheet. */
export interface Matched {
  /** Parts of the first that are there in the second. */
  readonly pairs: readonly (readonly [expected: Part, found: Part])[];
  /** Parts of the first with none of their kind at their place. */
  readonly missing: readonly Part[];
  /** Parts of the second that are none of the first. */
  readonly extra: readonly Part[];
}

/**
 * Matches parts by kind and place, each to the nearest. `moved` leads from the first drawing's sheet
 * to the second's; `reach`: how far apart the same part may lie there, pixels.
 */
export function matchParts(
  expected: readonly Part[],
  found: readonly Part[],
  moved: (at: Point) => Point,
  reach: number,
): Matched {
  const free = new Set(found.filter(isPart));
  const pairs: (readonly [Part, Part])[] = [];
  const missing: Part[] = [];
  for (const part of expected.filter(isPart)) {
    const there = moved(part.at);
    const [nearest] = [...free]
      .filter(({ kind, at }) => kind === part.kind && distance(at, there) <= reach)
      .sort((a, b) => distance(a.at, there) - distance(b.at, there));
    if (nearest) {
      free.delete(nearest);
      pairs.push([part, nearest]);
    } else missing.push(part);
  }
  return { pairs, missing, extra: [...free] };
}

/**
 * The nets of a drawing as sets of pins, splices and ends of lines contracted; each a sorted list, the
 * lists sorted. A pin without a wire is a net of its own. `nameOf` gives a pin another name, null leaves
 * it out.
 */
export function netsOf(
  { diagram }: Pick<Job, "diagram">,
  nameOf: (ref: string) => string | null,
): string[] {
  const heads = new Map<string, string>();
  const headOf = (ref: string): string => {
    const next = heads.get(ref);
    return next === undefined || next === ref ? ref : headOf(next);
  };
  for (const { from, to } of diagram.wires) heads.set(headOf(from), headOf(to));
  const nets = new Map<string, string[]>();
  for (const part of diagram.parts.filter(isPart)) {
    for (const pin of pinsOf(part)) {
      const ref = pinRef(part.id, pin.id);
      const name = nameOf(ref);
      if (name === null) continue;
      const head = headOf(ref);
      nets.set(head, [...(nets.get(head) ?? []), name]);
    }
  }
  return [...nets.values()].map((pins) => pins.sort().join(" ")).sort();
}

/**
 * Names of the first drawing's pins for those of the second, by place: the same part's nearest pin.
 * Which of two like ends is called 1 is anybody's choice; where they lie is not.
 */
export function pinNames(
  pairs: Matched["pairs"],
  moved: (at: Point) => Point,
): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const [expected, found] of pairs) {
    const free = new Set(pinsOf(found));
    for (const pin of pinsOf(expected)) {
      const there = moved(toSheet(expected, pin.at));
      const [nearest] = [...free].sort(
        (a, b) => distance(toSheet(found, a.at), there) - distance(toSheet(found, b.at), there),
      );
      if (!nearest) continue;
      free.delete(nearest);
      names.set(pinRef(found.id, nearest.id), pinRef(expected.id, pin.id));
    }
  }
  return names;
}
