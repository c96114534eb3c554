import type { Branch, Decider } from "./branch.ts";

/** The same branch with its nodes named otherwise. */
export const placeBranch = <From, To>(
  { a, b, owner, element, acts, gate, closedIn }: Branch<From>,
  at: (node: From) => To,
): Branch<To> => ({ a: at(a), b: at(b), owner, element, acts, gate, closedIn });

/** The same decider with its nodes named otherwise; `grounds`: further ones to count levels from. */
export function placeDecider<From, To>(
  decider: Decider<From>,
  at: (node: From) => To,
  grounds: readonly To[],
): Decider<To> {
  switch (decider.is) {
    case "coil":
      return { ...decider, a: at(decider.a), b: at(decider.b) };
    case "fed":
      return { ...decider, pairs: decider.pairs.map(([a, b]) => [at(a), at(b)] as const) };
    case "level":
      return {
        ...decider,
        input: decider.input === null ? null : at(decider.input),
        grounds: [...decider.grounds.map(at), ...grounds],
      };
  }
}
