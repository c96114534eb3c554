import type { Meaning } from "./meaning.ts";

/**
 * What several words in one may mean: they narrow one another down where they agree on something
 * ("PUMP OUT"); otherwise all their meanings are kept, so that a word which agrees with one of two
 * that disagree takes nothing from the other ("GROUND FOR PERMANENT SUPPLY").
 */
export function narrow(groups: readonly (readonly Meaning[])[]): readonly Meaning[] {
  const kept: (readonly Meaning[])[] = [];
  for (const group of groups) {
    const agreeing = kept.map((one) => inCommon(one, group));
    if (agreeing.every((common) => common.length === 0)) kept.push(group);
    for (const [index, common] of agreeing.entries()) if (common.length > 0) kept[index] = common;
  }
  return allOf(kept);
}

const inCommon = (kept: readonly Meaning[], group: readonly Meaning[]) =>
  kept
    .filter((one) => group.some((other) => agree(one, other)))
    .map((one) => ({ ...one, side: one.side ?? sideIn(group, one) }));

const agree = (a: Meaning, b: Meaning) =>
  a.role === b.role && (a.side === null || b.side === null || a.side === b.side);

const sideIn = (group: readonly Meaning[], like: Meaning) =>
  group.find((one) => one.role === like.role)?.side ?? null;

/** All meanings, each once. */
export function allOf(readings: readonly (readonly Meaning[])[]): readonly Meaning[] {
  const kept: Meaning[] = [];
  for (const one of readings.flat()) {
    if (!kept.some(({ role, side }) => role === one.role && side === one.side)) kept.push(one);
  }
  return kept;
}
