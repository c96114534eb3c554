import { readWord as meaningsOfPrinted } from "../../../roles/index.ts";
import type { RawReading } from "./read-word.ts";
import { meaningsOf, tidied } from "./word-meaning.ts";

/** A reading of a word that a line touches, and how much it counts: how sure it is, 0 to 100, and more where it makes sense. */
export interface StruckReading {
  readonly text: string;
  readonly weight: number;
}

/**
 * What chance hardly makes of a word's remains: a name, a value, a wire's print with more than a number, or
 * words all of which are known as print beside pins.
 */
export const isTelling = (text: string): boolean =>
  isKnown(text) || (!FIRST_LOST.test(text) && hasMeaning(text));

/** A wire's number does not begin with 0: a line took the figure before it, as in `0-75 BK`. */
const FIRST_LOST = /^0-/;

const hasMeaning = (text: string): boolean =>
  meaningsOf(text).some(
    (one) =>
      !one.mended &&
      (one.is === "name" ||
        one.is === "amounts" ||
        (one.is === "wire" && Object.keys(one.print).length > 1)),
  );

const isKnown = (text: string): boolean =>
  /^[A-Z]{2,}( [A-Z\d]+)*$/i.test(text) &&
  text.split(" ").every((part) => /^\d{1,2}$/.test(part) || meaningsOfPrinted(part).length > 0);

/** A gap between figures so wide, in heights of the letters, has room for a hyphen. */
const HYPHEN_GAP = 0.36;
/** Figures on either side of the hyphen in a wire's number, at most. */
const MOST_FIGURES = 3;

/** A hyphen lies where lines do, and is taken away with them: `30 3 RD` was `30-3 RD`. Letters are so tall, pixels. */
export function withHyphen(
  { text, letters }: Pick<RawReading, "text" | "letters">,
  tall: number,
): string {
  if (text.includes("-")) return text;
  const parted = text.replace(/^(\d{1,3}) (?=\d{1,3}(?: |[A-Z]|$))/, "$1-");
  if (parted !== text) return parted;
  const head = /^\d{2,6}/.exec(text)?.[0].length ?? 0;
  for (let n = 1; n <= Math.min(MOST_FIGURES, head - 1); n++) {
    const [one, next] = [letters[n - 1], letters[n]];
    if (one && next && next.from - one.to > HYPHEN_GAP * tall && head - n <= MOST_FIGURES)
      return `${text.slice(0, n)}-${text.slice(n)}`;
  }
  return text;
}

/** Letters and figures that differ by a stroke which a line may hide, or by hardly anything. */
const ALIKE = ["EF", "IL", "CG", "OQ", "O0", "Q0", "D0", "PR", "RB", "PB", "B8", "S5", "Z2", "I1"];
/** Here the first of a pair may be the second, and never the other way round. */
const ALIKE_SIGNS = ["-.", "=-", ":-", "~-", "|/", "I/", ",/"];
/** Such a change is worth so much, and one that another look has said this share of that look's weight. */
const LIKE = 6;
const SAID = 0.4;
/** Each letter taken from elsewhere costs so much: one look alone is not worth a change that is not needed. */
const CHANGE = 50;
/** So many of the likeliest changes are tried, up to three at a time. */
const MOST_CHANGES = 14;

interface Change {
  readonly at: number;
  /** What stands there instead; may be nothing, or two letters. */
  readonly as: string;
  readonly gain: number;
}

/**
 * A text that makes sense, put together from what several looks said letter by letter, where none of them
 * made sense as a whole; null where there is none. It is a guess, and must be shown as one.
 */
export function letterByLetter(readings: readonly StruckReading[]): string | null {
  for (const base of [...readings].sort((a, b) => b.weight - a.weight)) {
    let best: { text: string; score: number } | null = null;
    const changes = changesOf(base, readings);
    const attempt = (used: readonly Change[]) => {
      const score = used.reduce((sum, { gain }) => sum + gain, 0);
      if (best && score <= best.score) return;
      const text = changed(base.text, used);
      if (text !== null && isWhole(text, base.text) && isTelling(text)) best = { text, score };
    };
    changes.forEach((one, n) => {
      attempt([one]);
      changes.slice(n + 1).forEach((other, m) => {
        attempt([one, other]);
        for (const third of changes.slice(n + m + 2)) attempt([one, other, third]);
      });
    });
    if (best) return (best as { text: string }).text;
  }
  return null;
}

/** Whether what was put together still has the letters of what it was made from, and neither end is a mere sign. */
const isWhole = (text: string, base: string): boolean =>
  text.length >= base.length - 1 && tidied(text) === text;

function changesOf(base: StruckReading, readings: readonly StruckReading[]): Change[] {
  const found = new Map<string, Change>();
  const add = (at: number, as: string, weight: number) => {
    const key = `${at} ${as}`;
    const known = found.get(key);
    found.set(key, { at, as, gain: known ? known.gain + weight : weight - CHANGE });
  };
  for (const other of readings) {
    if (other === base) continue;
    for (const { at, as } of apart(base.text, other.text)) add(at, as, SAID * other.weight);
  }
  [...base.text].forEach((letter, at) => {
    for (const pair of ALIKE) {
      if (pair.includes(letter)) add(at, pair.replace(letter, ""), LIKE);
    }
    for (const pair of ALIKE_SIGNS) if (pair[0] === letter) add(at, pair[1] as string, LIKE);
  });
  return [...found.values()].sort((a, b) => b.gain - a.gain).slice(0, MOST_CHANGES);
}

/** Null where two changes are of one letter. */
function changed(text: string, changes: readonly Change[]): string | null {
  const out = [...text];
  const sorted = [...changes].sort((a, b) => b.at - a.at);
  if (sorted.some(({ at }, n) => sorted[n + 1]?.at === at)) return null;
  for (const { at, as } of sorted) out[at] = as;
  return out.join("");
}

/** Where another text says something else, by the letters of the first: as few changes as there can be. */
function apart(text: string, other: string): { readonly at: number; readonly as: string }[] {
  const [n, m] = [text.length, other.length];
  const cost = Array.from({ length: n + 1 }, (_, i) =>
    Array.from({ length: m + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  const at = (i: number, j: number) => (cost[i] as number[])[j] as number;
  for (let i = 1; i <= n; i++) {
    for (let j = 1; j <= m; j++) {
      const swap = at(i - 1, j - 1) + (text[i - 1] === other[j - 1] ? 0 : 1);
      (cost[i] as number[])[j] = Math.min(swap, at(i - 1, j) + 1, at(i, j - 1) + 1);
    }
  }
  const found: { at: number; as: string }[] = [];
  let [i, j] = [n, m];
  while (i > 0 && j > 0) {
    const isSame = text[i - 1] === other[j - 1];
    if (at(i, j) === at(i - 1, j - 1) + (isSame ? 0 : 1)) {
      if (!isSame) found.push({ at: i - 1, as: other[j - 1] as string });
      i--;
      j--;
    } else if (at(i, j) === at(i - 1, j) + 1) {
      found.push({ at: i - 1, as: "" });
      i--;
    } else {
      found.push({ at: i - 1, as: `${text[i - 1]}${other[j - 1]}` });
      j--;
    }
  }
  while (i > 0) found.push({ at: --i, as: "" });
  if (j > 0 && n > 0) found.push({ at: 0, as: `${other.slice(0, j)}${text[0]}` });
  return found;
}
