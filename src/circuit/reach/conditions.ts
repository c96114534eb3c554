/**
 * Conditions under which something conducts, as a list of cubes ("this OR that"). A cube says for
 * some variables (switches, relays, pins of the judged module) which of their values it allows,
 * one bit a value; a variable left out may have any value.
 */

/** Flat pairs of variable number and allowed values, by rising variable number. */
export type Cube = readonly number[];

/** Any of these cubes; none: never. */
export type Condition = readonly Cube[];

export const ALWAYS: Cube = [];

/** Both cubes at once; null where they exclude each other. */
export function both(a: Cube, b: Cube): Cube | null {
  if (a.length === 0) return b;
  if (b.length === 0) return a;
  const merged: number[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const va = i < a.length ? (a[i] as number) : Number.POSITIVE_INFINITY;
    const vb = j < b.length ? (b[j] as number) : Number.POSITIVE_INFINITY;
    if (va < vb) {
      merged.push(va, a[i + 1] as number);
      i += 2;
    } else if (vb < va) {
      merged.push(vb, b[j + 1] as number);
      j += 2;
    } else {
      const values = (a[i + 1] as number) & (b[j + 1] as number);
      if (values === 0) return null;
      merged.push(va, values);
      i += 2;
      j += 2;
    }
  }
  return merged;
}

/** True where everything that `specific` allows, `general` allows too. */
export function covers(general: Cube, specific: Cube): boolean {
  let j = 0;
  for (let i = 0; i < general.length; i += 2) {
    const variable = general[i] as number;
    while (j < specific.length && (specific[j] as number) < variable) j += 2;
    if (j >= specific.length || specific[j] !== variable) return false;
    if (((specific[j + 1] as number) & ~(general[i + 1] as number)) !== 0) return false;
  }
  return true;
}

/** The condition with `cube` added and whatever it makes needless left out; the same object if needless itself. */
export function withCube(condition: Condition, cube: Cube): Condition {
  if (condition.some((one) => covers(one, cube))) return condition;
  return [...condition.filter((one) => !covers(cube, one)), cube];
}

/** Everything that both conditions allow, without needless cubes; null past `limit` cubes. */
export function allOf(a: Condition, b: Condition, limit: number): Condition | null {
  let joined: Condition = [];
  for (const one of a) {
    for (const other of b) {
      const cube = both(one, other);
      if (cube) joined = withCube(joined, cube);
      if (joined.length > limit) return null;
    }
  }
  return joined;
}

/** Bits of all values of a variable. */
export type ValuesOf = (variable: number) => number;

/** Everything the condition does not allow; null past `limit` cubes. */
export function negate(condition: Condition, valuesOf: ValuesOf, limit: number): Condition | null {
  let result: Condition = [ALWAYS];
  for (const cube of condition) {
    const outside: Cube[] = [];
    for (let i = 0; i < cube.length; i += 2) {
      const variable = cube[i] as number;
      const rest = valuesOf(variable) & ~(cube[i + 1] as number);
      if (rest !== 0) outside.push([variable, rest]);
    }
    const next = allOf(result, outside, limit);
    if (next === null) return null;
    result = next;
  }
  return result;
}

/** The cube without the variables that it allows every value of. */
export function tidy(cube: Cube, valuesOf: ValuesOf): Cube {
  const kept: number[] = [];
  for (let i = 0; i < cube.length; i += 2) {
    const variable = cube[i] as number;
    const values = cube[i + 1] as number;
    if (values !== valuesOf(variable)) kept.push(variable, values);
  }
  return kept.length === cube.length ? cube : kept;
}

/** The cube with one variable's limits dropped. */
export function without(cube: Cube, variable: number): Cube {
  for (let i = 0; i < cube.length; i += 2) {
    if (cube[i] === variable) return [...cube.slice(0, i), ...cube.slice(i + 2)];
  }
  return cube;
}

/** Values of `variable` that the cube allows. */
export function valuesIn(cube: Cube, variable: number, valuesOf: ValuesOf): number {
  for (let i = 0; i < cube.length; i += 2) {
    if (cube[i] === variable) return cube[i + 1] as number;
  }
  return valuesOf(variable);
}

/**
 * All the most general cubes of a condition (its prime implicants), by iterated consensus: two
 * cubes that only one variable keeps apart also allow what both allow of the rest. So a feed
 * that is live in each position of a changeover is found to be live always. Null past `limit`.
 */
export function mostGeneral(
  condition: Condition,
  valuesOf: ValuesOf,
  limit: number,
): Condition | null {
  let primes: Condition = [];
  const waiting = condition.map((cube) => tidy(cube, valuesOf));
  for (let cube = waiting.pop(); cube; cube = waiting.pop()) {
    const next = withCube(primes, cube);
    if (next === primes) continue;
    for (const other of next) {
      if (other === cube) continue;
      for (let i = 0; i < cube.length; i += 2) {
        const variable = cube[i] as number;
        const mine = cube[i + 1] as number;
        const theirs = valuesIn(other, variable, valuesOf);
        if ((mine | theirs) === mine) continue;
        const rest = both(without(cube, variable), without(other, variable));
        if (!rest) continue;
        const joined = both(rest, [variable, mine | theirs]);
        if (joined) waiting.push(tidy(joined, valuesOf));
      }
    }
    primes = next;
    if (primes.length > limit || waiting.length > limit * limit) return null;
  }
  return primes;
}
