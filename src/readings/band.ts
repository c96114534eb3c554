import {
  type Branch,
  held,
  nominal,
  type OperatingPoint,
  type Setting,
  transfer,
  type Wiring,
} from "../circuit/index.ts";

/**
 * The band of a healthy machine. Every wire, contact, winding, battery and filament may lie anywhere
 * within its own limits; the sign with which each moves the reading (its own current times the
 * current that a source between the probes would send through it) says which limit to take for the
 * lowest and the highest reading. Relays stay as they are.
 */

/** A filament's cold ohms lie between these shares of its hot ones. */
const COLDEST = 1 / 16;
const WARMEST = 1 / 8;

/** −1: everything at its lower limit; +1: at its upper. */
type Edge = -1 | 1;

interface Push {
  readonly ohms: Edge;
  readonly volts: Edge;
}

function atEdge({ acts }: Branch, push: Push): Setting {
  const up = push.ohms > 0;
  switch (acts.is) {
    case "ohmic": {
      const ohms = up ? acts.high : acts.low;
      return { ohms, cold: ohms, volts: 0 };
    }
    case "slide": {
      const ohms = acts.rising === up ? acts.track : 0;
      return { ohms, cold: ohms, volts: 0 };
    }
    case "filament": {
      const ohms = acts.hot * acts.spread[up ? 1 : 0];
      return { ohms, cold: ohms * (up ? WARMEST : COLDEST), volts: 0 };
    }
    case "source":
    case "junction":
      return {
        ohms: acts.ohms,
        cold: acts.ohms,
        volts: push.volts > 0 ? acts.high : acts.low,
      };
  }
}

/** How each branch must be pushed to move V(red) − V(black) towards `edge`. */
function pushes(
  point: OperatingPoint,
  branches: readonly Branch[],
  seen: Float64Array,
  edge: Edge,
): readonly Push[] {
  const own = branches.map(({ a, b }, index) => {
    const probe = ((seen[a] as number) - (seen[b] as number)) / (point.ohms[index] as number);
    return { probe, slope: probe * (point.amps[index] as number) };
  });
  // both halves of a track move together
  const slides = new Map<string, number>();
  branches.forEach(({ acts, owner }, index) => {
    if (acts.is !== "slide" || owner === null) return;
    const slope = own[index]?.slope ?? 0;
    slides.set(owner, (slides.get(owner) ?? 0) + (acts.rising ? slope : -slope));
  });
  const sign = (value: number): Edge => (value * edge >= 0 ? 1 : -1);
  return branches.map(({ acts, owner }, index) => ({
    ohms: sign(
      acts.is === "slide" && owner !== null ? (slides.get(owner) ?? 0) : (own[index]?.slope ?? 0),
    ),
    volts: sign(own[index]?.probe ?? 0),
  }));
}

/** Lowest and highest V(red) − V(black); null where the two don't hang together. */
export function voltsBand(
  wiring: Wiring,
  states: ReadonlyMap<string, boolean>,
  extra: readonly Branch[],
  red: number,
  black: number,
): readonly [low: number, high: number] | null {
  const branches = [...wiring.branches, ...extra];
  const middle = held(wiring, states, extra, nominal);
  const start = transfer(middle, red, black);
  if (!start) return null;
  const across = (point: OperatingPoint) =>
    (point.volts[red] as number) - (point.volts[black] as number);
  const towards = (edge: Edge): number => {
    let push = pushes(middle, branches, start, edge);
    let best = across(middle);
    // the signs can turn on the way to the edge: look again from there
    for (let round = 0; round < 2; round++) {
      const chosen = new Map(branches.map((branch, index) => [branch, push[index] as Push]));
      const point = held(wiring, states, extra, (branch) =>
        atEdge(branch, chosen.get(branch) as Push),
      );
      const volts = across(point);
      best = edge > 0 ? Math.max(best, volts) : Math.min(best, volts);
      const seen = transfer(point, red, black);
      if (!seen) break;
      push = pushes(point, branches, seen, edge);
    }
    return best;
  };
  return [towards(-1), towards(1)];
}

/** Lowest and highest ohms between two nodes of a dead circuit; null where they don't hang together. */
export function ohmsBand(
  wiring: Wiring,
  states: ReadonlyMap<string, boolean>,
  red: number,
  black: number,
): readonly [low: number, high: number] | null {
  const ohmsWith = (setting: (branch: Branch) => Setting): number | null => {
    const point = held(wiring, states, [], setting, true);
    const seen = transfer(point, red, black);
    return seen ? (seen[red] as number) - (seen[black] as number) : null;
  };
  // more ohms anywhere never means less between the probes; a wiper is tried at its ends and middle
  const all = ([-1, 1] as const).flatMap((edge) =>
    ([-1, 0, 1] as const).map((wiper) =>
      ohmsWith((branch) => {
        if (branch.acts.is !== "slide") return atEdge(branch, { ohms: edge, volts: 1 });
        return wiper === 0 ? nominal(branch) : atEdge(branch, { ohms: wiper, volts: 1 });
      }),
    ),
  );
  const found = all.flatMap((ohms) => (ohms === null ? [] : [ohms]));
  return found.length === all.length ? [Math.min(...found), Math.max(...found)] : null;
}
