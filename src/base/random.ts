/** A source of random numbers that a seed replays exactly. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform whole number in [0, bound). */
  below(bound: number): number;
  /** One member of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
  /** True with this probability. */
  chance(probability: number): boolean;
}

/** mulberry32, a public-domain 32-bit generator: small, fast, good enough for test data. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (bound: number) => Math.floor(next() * bound);
  return {
    next,
    below,
    pick: (list) => {
      const member = list[below(list.length)];
      if (member === undefined) throw new Error("pick from an empty list");
      return member;
    },
    chance: (probability) => next() < probability,
  };
}
