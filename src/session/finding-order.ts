import { keptOf, sameList } from "../base/index.ts";
import type { Finding, Severity } from "../check/index.ts";
import { findingKey } from "./counterparts.ts";

/** A finding under the name it is selected and remembered by. */
export interface OrderedFinding {
  readonly key: string;
  readonly finding: Finding;
}

const RANK: Readonly<Record<Severity, number>> = { contradiction: 0, warning: 1, note: 2 };

/**
 * Puts findings into the order they had: whoever was on the list keeps its place among the others,
 * and a new one goes behind those of its severity, so that nothing on the list changes places
 * under the finger. `before` are the keys last shown, gone ones included: a finding that comes
 * back, as with undo, finds its old place.
 */
export function orderFindings(
  findings: readonly Finding[],
  before: readonly string[],
): readonly OrderedFinding[] {
  const places = new Map(before.map((key, place) => [key, place]));
  const list = findings.map(named);
  const isNew = ({ key }: OrderedFinding) => !places.has(key);
  // Sorting is stable: new ones stay in the order of the check.
  return list.sort((a, b) => {
    const severity = RANK[a.finding.severity] - RANK[b.finding.severity];
    if (severity !== 0) return severity;
    if (isNew(a) !== isNew(b)) return isNew(a) ? 1 : -1;
    return (places.get(a.key) ?? 0) - (places.get(b.key) ?? 0);
  });
}

/** The same object for the same finding: what shows it need not look again. */
const named = keptOf((finding: Finding): OrderedFinding => ({ key: findingKey(finding), finding }));

/** The keys to hand in next time: those shown now, and those gone, each at its old place. */
export function rememberOrder(
  shown: readonly OrderedFinding[],
  before: readonly string[],
): readonly string[] {
  const keys = shown.map((one) => one.key);
  const now = new Set(keys);
  const gone = before.filter((key) => !now.has(key));
  if (gone.length === 0) return sameList(keys, before) ? before : keys;
  const remembered: string[] = [];
  const rest = [...keys];
  // Walk the old list; where it names one still shown, the shown ones up to it come first.
  for (const key of before) {
    if (!now.has(key)) remembered.push(key);
    else {
      const end = rest.indexOf(key);
      if (end >= 0) remembered.push(...rest.splice(0, end + 1));
    }
  }
  remembered.push(...rest);
  const recent = remembered.slice(-MOST_REMEMBERED);
  return sameList(recent, before) ? before : recent;
}

/** Long sessions leave many findings behind. */
const MOST_REMEMBERED = 2000;
