import type { Finding } from "../check/index.ts";
import type { Id, Job, Part } from "../job/index.ts";

const kept = new WeakMap<readonly Part[], ReadonlySet<Id>>();

/** Ids of the switches that the operator's hand or foot works: what a switch just placed is taken for, too. */
function operated({ parts }: Job["diagram"]): ReadonlySet<Id> {
  const known = kept.get(parts);
  if (known) return known;
  const ids = new Set(
    parts.flatMap((part) =>
      part.kind === "switch" && part.control === "operator" ? [part.id] : [],
    ),
  );
  kept.set(parts, ids);
  return ids;
}

const NONE: readonly Id[] = [];

/**
 * Switches on the line of a pin whose role is open, from the pin outward, of which nobody may have said yet
 * what works them: a key switch or an isolator among them would settle more of the pin.
 */
export function switchesInDoubt(
  { diagram }: Job,
  { rule, because = NONE }: Pick<Finding, "rule" | "because">,
): readonly Id[] {
  if (rule !== "role-undecided") return NONE;
  const ids = operated(diagram);
  return because.filter((id) => ids.has(id));
}
