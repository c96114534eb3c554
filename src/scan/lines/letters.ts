import { addTo, type Box, type Point } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { type Branch, bendBetween } from "./branch.ts";
import { withoutStretches } from "./fewer-stretches.ts";
import { CROWDED, type ForkPlaces, placesOfForks } from "./fork-places.ts";
import { Headings, nodeOf } from "./headings.ts";
import { GOES_ON, linesAmong, TIP } from "./lines-among.ts";
import { NearEnds } from "./near-ends.ts";
import { endsAtParts, type OpenEnd, openEnds } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** In line widths: no word is higher. */
const HIGH = 8;
/** In line widths: forks so near to one another are one place. */
const ONE_PLACE = 2;
/** Degrees between the beginnings of two halves of a line, be it an arc. */
const HALF = 55;
/** A stroke whose ends are nearer to one another than this share of its length is curled. */
const CURLED = 0.87;
/** In line widths beyond a place, where a line that seems to end there may go on in letters' ink. */
const BEYOND = [1.5, 3.5] as const;
/** So many strokes are no arm of a crossing, ragged as it may be. */
const WORD = 3;
/** In line widths and degrees: an end that a line may go on in over a hole is that line's. */
const HOLE = 9;
const FACES = 18;
const BESIDE = 3;
/** Stretches looked at in a slice. */
const STRETCHES = 500;

/** The lines of a page without the strokes of letters that touch them. */
export function* withoutLetters(
  page: PreparedPage,
  skeleton: Skeleton,
  parts: readonly Box[],
): Sliced<Skeleton> {
  const ends = yield* asPart(openEnds(page, skeleton, parts), 0, 0.2);
  const atParts = endsAtParts(page, skeleton, parts);
  yield 0.3;
  const letters = yield* asPart(letterStrokes(page, skeleton, ends, atParts), 0.3, 0.9);
  if (letters.size === 0) return skeleton;
  const tiny = ONE_PLACE * page.lineWidth;
  return yield* asPart(withoutStretches(skeleton, letters, tiny), 0.9, 1);
}

/**
 * Strokes of letters that touch a line: small tangles of short strokes off every line that runs on.
 * By number of stretch. A single straight stroke is none: it may be what is left of a line.
 */
function* letterStrokes(
  page: PreparedPage,
  skeleton: Skeleton,
  ends: readonly OpenEnd[],
  atParts: ReadonlySet<number>,
): Sliced<ReadonlySet<number>> {
  const { lineWidth } = page;
  const { stretches } = skeleton;
  const places = placesOfForks(skeleton, ONE_PLACE * lineWidth);
  yield 0.1;
  const headings = new Headings(page, skeleton);
  const isLine = yield* asPart(linesAmong(page, skeleton, places, headings, atParts), 0.1, 0.5);
  const letters = new Set<number>();
  const seen = new Set<number>();
  const reach = HOLE * lineWidth;
  const lineEnds = new NearEnds(
    ends.filter(({ stretch }) => isLine.has(stretch)),
    reach,
  );
  const endsOf = new Map<number, OpenEnd[]>();
  for (const end of ends) addTo(endsOf, end.stretch, end);
  for (let first = 0; first < stretches.length; first++) {
    if (first % STRETCHES === 0) yield 0.5 + (0.5 * first) / stretches.length;
    if (isLine.has(first) || seen.has(first)) continue;
    const share = 0.5 + (0.5 * first) / stretches.length;
    const tangle = yield* asPart(tangleAt(skeleton, first, isLine, seen), share, share);
    if (!isSmall(skeleton, tangle, lineWidth)) continue;
    const goesOn = tangle.some((stretch) =>
      endsOf
        .get(stretch)
        ?.some((end) => lineEnds.around(end.at, reach).some((line) => faces(end, line, lineWidth))),
    );
    if (goesOn) continue;
    const left = leftWithout(skeleton, tangle, places);
    const isAll = left.every(
      ({ lines, gone }) =>
        lines.length > 1 &&
        lines.length + gone.length <= CROWDED &&
        isWhole(page, skeleton, headings, lines, gone),
    );
    if (!isAll) continue;
    // It may be what is left of a crossing's arm.
    const least = left.some(({ lines }) => lines.length === 3) ? WORD : 1;
    if (isTangle(skeleton, tangle, least, lineWidth)) for (const one of tangle) letters.add(one);
  }
  return letters;
}

/** What hangs together with a stretch off every line. All of it is `seen` then. */
function* tangleAt(
  { stretches, nodes }: Skeleton,
  first: number,
  isLine: ReadonlySet<number>,
  seen: Set<number>,
): Sliced<readonly number[]> {
  const tangle = [first];
  seen.add(first);
  for (let n = 0; n < tangle.length; n++) {
    if (n % STRETCHES === STRETCHES - 1) yield 0;
    const { from, to } = stretches[tangle[n] as number] as Stretch;
    for (const node of [from, to]) {
      const met = (nodes[node] as SkeletonNode).stretches;
      if (met.some((one) => isLine.has(one))) continue;
      for (const next of met) {
        if (seen.has(next)) continue;
        seen.add(next);
        tangle.push(next);
      }
    }
  }
  return tangle;
}

/** Whether an end may go on in another over a hole: in a small one, be it round a corner or an arc. */
function faces(end: OpenEnd, line: OpenEnd, lineWidth: number): boolean {
  const [dx, dy] = [line.at[0] - end.at[0], line.at[1] - end.at[1]];
  const wide = Math.hypot(dx, dy);
  if (wide <= BESIDE * lineWidth) return true;
  if (wide > HOLE * lineWidth) return false;
  if (bendBetween(end.onward, line.onward) > FACES) return false;
  return Math.abs(dx * line.onward[1] - dy * line.onward[0]) <= lineWidth;
}

/** A place of lines at which a tangle hangs: what would leave it without the tangle, and what would be gone. */
interface PlaceLeft {
  readonly lines: readonly Branch[];
  readonly gone: readonly Branch[];
}

function leftWithout(
  { stretches }: Skeleton,
  tangle: readonly number[],
  { placeOf, leaving }: ForkPlaces,
): PlaceLeft[] {
  const isGone = new Set(tangle);
  const places = new Set(
    tangle.flatMap((stretch) => {
      const { from, to } = stretches[stretch] as Stretch;
      return [placeOf(from), placeOf(to)];
    }),
  );
  return [...places].flatMap((place) => {
    const all = leaving.get(place) ?? [];
    const lines = all.filter(({ stretch }) => !isGone.has(stretch));
    const gone = all.filter(({ stretch }) => isGone.has(stretch));
    return lines.length === 0 ? [] : [{ lines, gone }];
  });
}

/**
 * Whether nothing is missing of lines that meet: each goes straight on in another, or in no ink at all.
 * What begins as the other half of a line does is no letter's: it may be half of an arc.
 */
function isWhole(
  page: PreparedPage,
  skeleton: Skeleton,
  headings: Headings,
  lines: readonly Branch[],
  gone: readonly Branch[],
): boolean {
  const ways = lines.map((line) => headings.wayOf(line));
  const starts = lines.map((line) => headings.startOf(line));
  return lines.every((line, n) => {
    const [way, start] = [ways[n], starts[n]];
    if (!way) return false;
    const goesOn = (mine: Point | null | undefined, all: readonly (Point | null)[]) =>
      all.some((other, k) => k !== n && mine && other && bendBetween(mine, other) <= GOES_ON);
    // A corner a little farther on bends what is seen of a line.
    if (goesOn(way, ways) || goesOn(start, starts)) return true;
    const isHalf = (other: Branch) => {
      const begins = headings.startOf(other);
      return start && begins && bendBetween(start, begins) <= HALF;
    };
    if (gone.some(isHalf)) return false;
    const { x, y } = skeleton.nodes[nodeOf(skeleton, line)] as SkeletonNode;
    let [dark, all] = [0, 0];
    for (let far = BEYOND[0]; far <= BEYOND[1]; far += 0.5, all++) {
      const [px, py] = [x - way[0] * far * page.lineWidth, y - way[1] * far * page.lineWidth];
      if (page.ink.data[Math.round(py) * page.ink.width + Math.round(px)]) dark++;
    }
    return 2 * dark <= all;
  });
}

/** Whether strokes are as small as a word. */
function isSmall({ stretches, width }: Skeleton, tangle: readonly number[], lineWidth: number) {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const stretch of tangle) {
    const { pixels } = stretches[stretch] as Stretch;
    for (let n = 0; n < pixels.length; n++) {
      const at = pixels[n] as number;
      const x = at % width;
      const y = (at - x) / width;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
    if (Math.min(right - left, bottom - top) > HIGH * lineWidth) return false;
  }
  return true;
}

/** Whether they are strokes, `least` of them, and not one that is straight. */
function isTangle(
  { stretches, nodes }: Skeleton,
  tangle: readonly number[],
  least: number,
  lineWidth: number,
): boolean {
  const strokes = tangle.filter((one) => (stretches[one] as Stretch).length > TIP * lineWidth);
  if (strokes.length !== 1 || least > 1) return strokes.length >= Math.max(2, least);
  const { from, to, length } = stretches[strokes[0] as number] as Stretch;
  const [a, b] = [nodes[from] as SkeletonNode, nodes[to] as SkeletonNode];
  return Math.hypot(a.x - b.x, a.y - b.y) < CURLED * length;
}
