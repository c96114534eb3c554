import type { Box, Point } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { answered } from "./answered.ts";
import { hasDot } from "./blob.ts";
import { joinWhereSaid, lineNear } from "./joined-by-hand.ts";
import { withoutLetters } from "./letters.ts";
import type { LineContext } from "./line-context.ts";
import { lineMask } from "./line-mask.ts";
import { Links } from "./links.ts";
import { lostCrossings } from "./lost-crossings.ts";
import { endsAtParts, openEnds } from "./open-ends.ts";
import { type LinePlace, linePlaces } from "./places.ts";
import type { PreparedPage } from "./prepared-page.ts";
import { markedSkeleton, type Skeleton, type SkeletonNode } from "./skeleton.ts";
import { withoutSpurs } from "./spurs.ts";
import { straightThrough } from "./straight-through.ts";
import { strayPlaces } from "./stray-lines.ts";

/** A place where the picture can't tell whether lines are joined. Nothing is joined there. */
export interface Question {
  /** A dot or a plain crossing; a hole in the print or two lines that stop. */
  readonly kind: "dot" | "gap";
  readonly at: Point;
  readonly isLikelier: "joined" | "apart";
  /** Stretches that would be one if it were answered with "joined". */
  readonly stretches: readonly number[];
}

export interface FollowedPage {
  readonly skeleton: Skeleton;
  readonly links: Links;
  /** Of each stretch the number of its net. */
  readonly netOf: readonly number[];
  /** Holes in lines that were passed, from end to end. */
  readonly bridges: readonly (readonly [Point, Point])[];
  readonly questions: readonly Question[];
  /** Whether the paper is so rough that nothing is asked, and little joined: its grain looks like lines. */
  readonly isTooRough: boolean;
  /** Places of the prepared page at which a word or the user cut off a line. */
  readonly stops: ReadonlySet<number>;
}

/**
 * Follows every line of a page outside the boxes of its parts and words. All in pixels of the prepared
 * page, `context` too.
 */
export function* followLines(page: PreparedPage, context: LineContext): Sliced<FollowedPage> {
  const { parts, words } = context;
  const answers = context.answers.filter(({ stray }) => !stray);
  const strays = context.answers.flatMap(({ at, stray }) => (stray ? [at] : []));
  const cuts: Point[] = [];
  const gone = new Set<number>();
  let [isStrayGone, isParted] = [false, false];
  for (;;) {
    const mask = lineMask(page, parts, words, cuts, gone);
    yield 0.1;
    const all = yield* asPart(markedSkeleton(mask.lines, mask.places), 0.1, 0.6);
    const isStop = ({ pixels: [at] }: SkeletonNode) => at !== undefined && mask.stops.has(at);
    const smooth = yield* asPart(withoutSpurs(page, all, isStop), 0.6, 0.6);
    const skeleton = yield* asPart(withoutLetters(page, smooth, parts), 0.6, 0.62);
    const open = yield* asPart(openEnds(page, skeleton, parts), 0.62, 0.65);
    const ends = open.filter(({ node }) => !isStop(skeleton.nodes[node] as SkeletonNode));
    const atParts = endsAtParts(page, skeleton, parts);
    yield 0.7;
    const places = yield* asPart(linePlaces(page, skeleton, mask, ends, atParts), 0.7, 0.9);
    if (!isParted) {
      isParted = true;
      const facings = places.flatMap((one) => (one.kind === "facing" ? [one.facing] : []));
      for (const place of lostCrossings(facings, mask.lines, page.lineWidth)) gone.add(place);
      if (gone.size > 0) continue;
    }
    const { said, others } = answered(answers, places);
    // How far a line goes that is none, only its joints say: the others are followed once more without it.
    if (!isStrayGone && strays.length > 0) {
      isStrayGone = true;
      const { links } = decidedBy(page, skeleton, places, said);
      const stray = strayPlaces(page, skeleton, links, strays);
      for (const place of stray) gone.add(place);
      if (stray.size > 0) continue;
    }
    const isCut = new Set(cuts);
    const more = others.filter(
      ({ at, joined }) => !joined && !isCut.has(at) && lineNear(page, mask.lines, at),
    );
    // Where a line that nobody doubted is to be cut, it is followed once more without that place.
    if (more.length > 0) {
      for (const { at } of more) cuts.push(at);
      continue;
    }
    const decided = decidedBy(page, skeleton, places, said);
    const joins = others.flatMap(({ at, joined }) => (joined ? [at] : []));
    joinWhereSaid(page, skeleton, decided.links, ends, joins);
    const { links, bridges, isTooRough } = decided;
    const questions = isTooRough ? [] : decided.questions;
    const netOf = skeleton.stretches.map((_, stretch) => links.netOf(stretch));
    return { skeleton, links, netOf, bridges, questions, isTooRough, stops: mask.stops };
  }
}

function decidedBy(
  page: PreparedPage,
  skeleton: Skeleton,
  places: readonly LinePlace[],
  said: ReadonlyMap<number, boolean>,
): Decided {
  const decided = new Decided(page, skeleton, isTooRough(places));
  places.forEach((place, n) => {
    decided.decide(place, said.get(n));
  });
  return decided;
}

/** So many forks or more, and more than this share of them on rough paper: hardly one of them was drawn. */
const MANY_FORKS = 20;
const ROUGH_SHARE = 0.5;

function isTooRough(places: readonly LinePlace[]): boolean {
  const forks = places.flatMap((place) =>
    "zone" in place && place.zone.branches.length > 2 ? [place.zone] : [],
  );
  const rough = forks.filter(({ isOnRoughPaper }) => isOnRoughPaper).length;
  return forks.length >= MANY_FORKS && rough > ROUGH_SHARE * forks.length;
}

/** Goes through the places of a page, joins lines there or asks. */
class Decided {
  readonly links: Links;
  readonly bridges: (readonly [Point, Point])[] = [];
  readonly questions: Question[] = [];
  private readonly page: PreparedPage;
  private readonly skeleton: Skeleton;
  readonly isTooRough: boolean;

  constructor(page: PreparedPage, skeleton: Skeleton, isTooRough: boolean) {
    this.isTooRough = isTooRough;
    this.page = page;
    this.skeleton = skeleton;
    this.links = new Links(skeleton);
  }

  /** `said`: whether the user said that lines are one there. */
  decide(place: LinePlace, said: boolean | undefined): void {
    if (place.kind === "zone") this.zone(place, said);
    else if (place.kind === "broken") this.broken(place, said);
    else if (place.kind === "gap") this.gap(place, said);
    else this.facing(place, said);
  }

  private zone({ zone, joint }: LinePlace & { kind: "zone" }, said: boolean | undefined): void {
    const { links, page } = this;
    const { at, radius, branches, inside } = zone;
    for (const stretch of inside) links.bumps.add(stretch);
    const isHidden = this.isTooRough && zone.isOnRoughPaper;
    const isJoined = said ?? (joint.kind === "joined" && !isHidden);
    if (isJoined) {
      // A bump of a plain fork may be the rest of a crossing's broken arm: only a dot has it for sure.
      const bumps = hasDot(zone) ? inside : [];
      const [a, b] = branches;
      if (a && b && branches.length === 2 && bumps.length === 0)
        links.pass(a, b, at, radius, false);
      else links.junction({ at, radius, ends: branches, bumps });
      return;
    }
    const pairs =
      joint.kind === "joined" ? straightThrough(page, this.skeleton, zone) : joint.pairs;
    for (const [a, b] of pairs) links.pass(a, b, at, radius, true);
    if (joint.kind !== "doubtful" || said !== undefined) return;
    const isLikelier = joint.isLikelier === "joined" ? "joined" : "apart";
    const stretches = branches.map(({ stretch }) => stretch);
    this.questions.push({ kind: "dot", at, isLikelier, stretches });
  }

  private broken(
    { zone, broken }: LinePlace & { kind: "broken" },
    said: boolean | undefined,
  ): void {
    const { links } = this;
    const { at, radius } = zone;
    const { through, stem, end, isSure } = broken;
    for (const stretch of zone.inside) links.bumps.add(stretch);
    const other = links.branchOf(end);
    if (said === true) {
      links.junction({ at, radius, ends: [...zone.branches, other], bumps: [] });
      this.bridges.push([at, end.at]);
      return;
    }
    links.pass(through[0], through[1], at, radius, true);
    if (isSure || said === false) {
      links.pass(stem, other, at, radius, true);
      this.bridges.push([at, end.at]);
      return;
    }
    const stretches = [...zone.branches.map(({ stretch }) => stretch), end.stretch];
    this.questions.push({ kind: "dot", at, isLikelier: "apart", stretches });
  }

  private gap({ at, gap }: LinePlace & { kind: "gap" }, said: boolean | undefined): void {
    const { links } = this;
    const [a, b] = gap.ends;
    const stretches = [a.stretch, b.stretch];
    if (said ?? gap.isSure) {
      links.pass(links.branchOf(a), links.branchOf(b), at, 0, false);
      this.bridges.push([a.at, b.at]);
    } else if (said === undefined && !links.isOne(a.stretch, b.stretch))
      this.questions.push({ kind: "gap", at, isLikelier: "joined", stretches });
  }

  private facing({ facing }: LinePlace & { kind: "facing" }, said: boolean | undefined): void {
    const { links } = this;
    const { end, stretch, at, isSure } = facing;
    if (said ?? isSure) {
      links.tap(links.branchOf(end), stretch, at);
      this.bridges.push([end.at, at]);
    } else if (said === undefined && !links.isOne(end.stretch, stretch)) {
      const stretches = [end.stretch, stretch];
      this.questions.push({ kind: "gap", at, isLikelier: "joined", stretches });
    }
  }
}

/** Boxes of a picture in pixels of the prepared page, and so on. */
export function contextOn({ scale }: PreparedPage, context: LineContext): LineContext {
  const boxOn = ({ left, top, right, bottom }: Box): Box => ({
    left: left * scale - 0.5,
    top: top * scale - 0.5,
    right: right * scale - 0.5,
    bottom: bottom * scale - 0.5,
  });
  return {
    parts: context.parts.map(boxOn),
    words: context.words.map(boxOn),
    answers: context.answers.map((answer) => ({
      ...answer,
      at: [answer.at[0] * scale - 0.5, answer.at[1] * scale - 0.5],
    })),
  };
}
