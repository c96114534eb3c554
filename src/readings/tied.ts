import { addTo } from "../base/index.ts";
import type { Branch } from "../circuit/index.ts";

/** Whether a way leads from one node to the other along these branches. */
export function tied(branches: readonly Branch[], red: number, black: number): boolean {
  const ways = new Map<number, number[]>();
  for (const { a, b } of branches) {
    addTo(ways, a, b);
    addTo(ways, b, a);
  }
  const seen = new Set([red]);
  const stack = [red];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    if (node === black) return true;
    for (const next of ways.get(node) ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      stack.push(next);
    }
  }
  return false;
}
