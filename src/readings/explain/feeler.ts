import { type Loosened, SHORT_OHMS } from "../../circuit/index.ts";

/**
 * What a fault may do to the volts between two points, never too little: by reciprocity one ampere
 * pushed in at the two gives at once what an ampere anywhere else does to them.
 *
 * 1. Two nodes that touch send V/(R + r) through each other, R being what a meter of ohms finds
 *    between them. That moves the two points by their volts of transfer times those amps, and, since
 *    nothing that only resists raises volts (Willson's no-gain theorem), never by more than V.
 *    R is at least that of the star of either node alone (Rayleigh's monotonicity).
 * 2. Something that opens moves them by the share of the ampere that it took, times the volts that
 *    then stand across it: never more than all sources have.
 */
export interface Feeler {
  /** Whether a touch of the two nodes may move them as far as it takes. */
  touches(a: number, b: number): boolean;
  /** The same worked out with all else as it is now, for one more sum each: where no proof hangs on it. */
  likelyTouches(a: number, b: number): boolean;
  /** Each two of many nodes that do, by their index. */
  touching(nodes: Int32Array, found: (one: number, other: number) => void): void;
  /** Share of the ampere that what lies between two nodes takes, having so many ohms. */
  share(a: number, b: number, ohms: number): number;
  /** Whether they feel it when what takes such a share in all opens or corrodes at once. */
  opens(share: number): boolean;
  /** The same for two nodes that are joined in a state in which any volts may stand between them. */
  closes(a: number, b: number): boolean;
}

/** What all feelers of one state have in common. */
export interface Felt {
  readonly loose: Loosened;
  /** Number of the piece that each node is in while what hangs loose is not tied on. */
  readonly apart: Int32Array;
  /** Siemens of all that leads away from the net of wires that each node is in. */
  readonly away: Float64Array;
  /** V of all sources together. */
  readonly most: number;
  /** Ω between two nodes of one piece. */
  ohms(a: number, b: number): number;
}

/** A share of the ampere that is all of it, but for rounding. */
const ALL = 0.999;

/** The plain way through each two of them. */
const eachTwo =
  (touches: Feeler["touches"]): Feeler["touching"] =>
  (nodes, found) => {
    for (let one = 0; one < nodes.length; one++)
      for (let other = one + 1; other < nodes.length; other++)
        if (touches(nodes[one] as number, nodes[other] as number)) found(one, other);
  };

/** Whether a touch ties the pieces of two points together that do not hang together. */
const joinsPieces =
  (piece: Int32Array, red: number, black: number): Feeler["touches"] =>
  (a, b) =>
    (piece[a] === piece[red] && piece[b] === piece[black]) ||
    (piece[a] === piece[black] && piece[b] === piece[red]);

/** Share of what it takes that counts as enough: filaments, spreads, several relays at once (our own, cautious). */
const ENOUGH = 1 / 3;

/**
 * `need`: V that must be moved, above 0. `way`: 1 where red must rise against black, -1 where it must
 * fall, 0 where either will do.
 */
export function feelerAt(
  { loose, apart, away, most, ohms: ohmsBetween }: Felt,
  [red, black]: readonly [number, number],
  need: number,
  way: 1 | 0 | -1,
): Feeler {
  const { piece, volts } = loose;
  const seen = loose.transfer(red, black);
  const enough = need * ENOUGH;
  const siemens = (a: number, b: number) =>
    Math.min(away[a] as number, away[b] as number, 1 / SHORT_OHMS);
  if (seen === null) {
    const joins = joinsPieces(piece, red, black);
    return {
      touches: joins,
      likelyTouches: joins,
      touching: eachTwo(joins),
      share: () => 0,
      opens: () => false,
      closes: joins,
    };
  }
  const of = piece[red];
  const moved = (a: number, b: number) =>
    piece[a] === of && piece[b] === of ? (seen[a] as number) - (seen[b] as number) : 0;
  /** What is tied to one piece twice may pass on anything. */
  const isLoose = (a: number, b: number) =>
    apart[a] !== apart[b] && piece[a] === of && piece[b] === of && most >= enough;
  const touches = (a: number, b: number) => {
    if (isLoose(a, b)) return true;
    const ohms = moved(a, b);
    if (ohms === 0) return false;
    const stands = (volts[a] as number) - (volts[b] as number);
    if (way !== 0 && way * ohms * stands > 0) return false;
    const all = Math.abs(stands);
    return all >= enough && Math.abs(ohms) * all * siemens(a, b) >= enough;
  };
  return {
    touches,
    likelyTouches: (a, b) => {
      if (!touches(a, b)) return false;
      if (isLoose(a, b)) return true;
      const stands = (volts[a] as number) - (volts[b] as number);
      return Math.abs(moved(a, b) * stands) >= enough * (ohmsBetween(a, b) + SHORT_OHMS);
    },
    touching: (nodes, found) => {
      // of one piece, and side by side: millions of pairs are looked at
      const places = Array.from(nodes.keys()).filter((at) => piece[nodes[at] as number] === of);
      const list = (values: Float64Array) =>
        Float64Array.from(places, (at) => values[nodes[at] as number] as number);
      const [ohms, stands, leads] = [list(seen), list(volts), list(away)];
      const pieces = Int32Array.from(places, (at) => apart[nodes[at] as number] as number);
      for (let i = 0; i < places.length; i++) {
        const ownOhms = ohms[i] as number;
        const ownVolts = stands[i] as number;
        const ownLeads = Math.min(leads[i] as number, 1 / SHORT_OHMS);
        const own = pieces[i];
        for (let j = i + 1; j < places.length; j++) {
          if (own === pieces[j]) {
            const moves = (ownOhms - (ohms[j] as number)) * (ownVolts - (stands[j] as number));
            const size = moves < 0 ? -moves : moves;
            const lead = leads[j] as number;
            if (size * Math.min(lead, ownLeads) < enough) continue;
            if (way !== 0 && way * moves > 0) continue;
            if (Math.abs(ownVolts - (stands[j] as number)) < enough) continue;
          } else if (most < enough) continue;
          found(places[i] as number, places[j] as number);
        }
      }
    },
    share: (a, b, ohms) => Math.abs(moved(a, b)) / ohms,
    opens: (share) => Math.min(1, share) * most >= enough,
    closes: (a, b) => Math.abs(moved(a, b)) * most * siemens(a, b) >= enough && most >= enough,
  };
}

/** The same for ohms between two points of a dead machine, where all is exact: `lower` or higher than now by `need` Ω. */
export function ohmFeelerAt(
  { loose, away, ohms: ohmsBetween }: Felt,
  [red, black]: readonly [number, number],
  need: number,
  lower: boolean,
): Feeler {
  const { piece } = loose;
  const seen = loose.transfer(red, black);
  const own = piece[red];
  if (seen === null) {
    const touches = lower ? joinsPieces(piece, red, black) : () => false;
    return {
      touches,
      likelyTouches: touches,
      touching: eachTwo(touches),
      share: () => 0,
      opens: () => false,
      closes: touches,
    };
  }
  const moved = (a: number, b: number) =>
    piece[a] === own && piece[b] === own ? (seen[a] as number) - (seen[b] as number) : 0;
  const touches = (a: number, b: number) => {
    if (!lower) return false;
    const ohms = moved(a, b);
    return (
      ohms ** 2 * Math.min(away[a] as number, away[b] as number, 1 / SHORT_OHMS) >= need * ENOUGH
    );
  };
  const now = (seen[red] as number) - (seen[black] as number);
  return {
    touches,
    likelyTouches: (a, b) =>
      touches(a, b) && moved(a, b) ** 2 >= need * ENOUGH * (ohmsBetween(a, b) + SHORT_OHMS),
    touching: lower ? eachTwo(touches) : () => undefined,
    closes: touches,
    share: (a, b, ohms) => Math.abs(moved(a, b)) / ohms,
    opens: (share) => {
      if (lower) return false;
      // no more than the amps that it took can find another way
      return share >= ALL || (now * share) / (1 - share) >= need * ENOUGH;
    },
  };
}
