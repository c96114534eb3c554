import type { Correction, Finding } from "../../check/index.ts";
import { ownerOf } from "../../job/index.ts";

/** Rules that doubt which cavity something was noted at; each names the plug or the cavities. */
const DOUBTS_PLACES: ReadonlySet<string> = new Set([
  "cavities-swapped",
  "face-mirrored",
  "mislaid-undecided",
  "row-off-by-one",
]);

/** What writes into the drawing that which was noted at a cavity. */
const WRITES_NOTES: ReadonlySet<Correction["does"]> = new Set(["take-colour", "take-number"]);

const NONE: readonly Correction[] = [];

/** Plugs and cavities of which a finding, not set aside, doubts that notes are at their own place. */
export const doubtedPlaces = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(
    findings
      .filter(({ rule, setAside }) => setAside === undefined && DOUBTS_PLACES.has(rule))
      .flatMap(({ subjects }) => subjects),
  );

/**
 * The ways to put a finding right that are safe to offer. As long as notes may stand at the wrong
 * cavity, none is offered that would write them into a drawing that may be right.
 */
export function offeredFor(
  { corrections = NONE, subjects }: Finding,
  doubted: ReadonlySet<string>,
): readonly Correction[] {
  const [chief = ""] = subjects;
  if (!doubted.has(chief) && !doubted.has(ownerOf(chief))) return corrections;
  const safe = corrections.filter(({ does }) => !WRITES_NOTES.has(does));
  return safe.length === corrections.length ? corrections : safe;
}
