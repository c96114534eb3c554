import type { Box, Point } from "../../base/index.ts";
import { linesFaced } from "./facing.ts";
import { brokenCrossing } from "./fork.ts";
import { gapsBetween } from "./gaps.ts";
import { hasDot, jointAt } from "./joint.ts";
import { type OpenEnd, openEnds } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";
import { type Skeleton, skeletonOf } from "./skeleton.ts";
import { zonesOf } from "./zones.ts";

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
  /** Of each stretch the number of its net. */
  readonly netOf: readonly number[];
  /** Holes in lines that were passed, from end to end. */
  readonly bridges: readonly (readonly [Point, Point])[];
  readonly questions: readonly Question[];
}

/** Follows every line of a page outside the boxes of its parts. All in pixels of the prepared page. */
export function followLines(page: PreparedPage, parts: readonly Box[]): FollowedPage {
  const thinned = withoutParts(page, parts);
  const skeleton = skeletonOf(thinned);
  const parent = skeleton.stretches.map((_, stretch) => stretch);
  const find = (of: number): number => {
    let root = of;
    while (parent[root] !== root) root = parent[root] as number;
    parent[of] = root;
    return root;
  };
  const join = (stretches: readonly number[]) => {
    const [first, ...others] = stretches;
    if (first === undefined) return;
    for (const other of others) parent[find(other)] = find(first);
  };
  const questions: Question[] = [];
  const bridges: (readonly [Point, Point])[] = [];
  const ends = openEnds(page, skeleton, parts);
  const used = new Set<OpenEnd>();
  for (const zone of zonesOf(page, skeleton)) {
    const broken = hasDot(page, zone) ? null : brokenCrossing(page, skeleton, zone, ends);
    if (broken) {
      const { through, stem, end } = broken;
      join(through.map(({ stretch }) => stretch));
      for (const other of ends) {
        if (other === end || zone.inside.includes(other.stretch)) used.add(other);
      }
      if (broken.isSure) {
        join([stem.stretch, end.stretch]);
        bridges.push([zone.at, end.at]);
      } else {
        const all = [...zone.branches.map(({ stretch }) => stretch), end.stretch];
        questions.push({ kind: "dot", at: zone.at, isLikelier: "apart", stretches: all });
      }
      continue;
    }
    const joint = jointAt(page, skeleton, zone);
    const all = zone.branches.map(({ stretch }) => stretch);
    // A bump of a plain fork may be the rest of a crossing's broken arm: only a dot has it for sure.
    if (joint.kind === "joined") join(hasDot(page, zone) ? [...all, ...zone.inside] : all);
    else {
      for (const pair of joint.pairs) join(pair.map(({ stretch }) => stretch));
      if (joint.kind === "doubtful") {
        const isLikelier = joint.isLikelier === "joined" ? "joined" : "apart";
        questions.push({ kind: "dot", at: zone.at, isLikelier, stretches: all });
      }
    }
  }
  const free = ends.filter((end) => !used.has(end));
  const faced = linesFaced(page, skeleton, thinned, free);
  for (const { ends: pair, isSure } of gapsBetween(page, free)) {
    for (const end of pair) used.add(end);
    const stretches = pair.map(({ stretch }) => stretch);
    if (find(stretches[0] as number) === find(stretches[1] as number)) continue;
    const [a, b] = [pair[0].at, pair[1].at];
    if (isSure) {
      join(stretches);
      bridges.push([a, b]);
    } else {
      const at: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      questions.push({ kind: "gap", at, isLikelier: "joined", stretches });
    }
  }
  for (const { end, stretch, at, isSure } of faced) {
    if (used.has(end) || find(end.stretch) === find(stretch)) continue;
    if (isSure) {
      join([end.stretch, stretch]);
      bridges.push([end.at, at]);
    } else {
      questions.push({ kind: "gap", at, isLikelier: "joined", stretches: [end.stretch, stretch] });
    }
  }
  return { skeleton, netOf: parent.map((_, stretch) => find(stretch)), bridges, questions };
}

/** No line is followed inside a part; its outline, as wide as any line, is the part's too. */
function withoutParts(page: PreparedPage, parts: readonly Box[]) {
  const { thinned, lineWidth } = page;
  const { width, height } = thinned;
  const data = thinned.data.slice();
  const rim = Math.ceil(lineWidth) + 1;
  for (const box of parts) {
    const left = Math.max(0, Math.floor(box.left) - rim);
    const right = Math.min(width, Math.ceil(box.right) + rim + 1);
    const bottom = Math.min(height, Math.ceil(box.bottom) + rim + 1);
    for (let y = Math.max(0, Math.floor(box.top) - rim); y < bottom; y++) {
      data.fill(0, y * width + left, y * width + right);
    }
  }
  return { width, height, data };
}
