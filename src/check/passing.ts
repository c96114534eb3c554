import { both, type Cube, type Explorer, type Flow, type Way } from "../circuit/index.ts";

/** Nets that a search from a supply looks at; what is further away is left out. */
export const MOST_NETS = 300;

/** The condition of a way together with what held before; null where it never conducts then. */
export function passing(explorer: Explorer, way: Way, flow: Flow, cube: Cube): Cube | null {
  for (const one of explorer.conduction(way, flow) ?? []) {
    const joined = both(cube, one);
    if (joined) return joined;
  }
  return null;
}
