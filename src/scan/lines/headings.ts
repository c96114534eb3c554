import type { Point } from "../../base/index.ts";
import { type Branch, headingOf, placesAlong } from "./branch.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** In line widths: on how much of a line its way is seen ... */
const [SEEN_FROM, SEEN_TO] = [1, 4];
/** ... and on how much of it how it begins. */
const STARTS = 2;

/** The node at which a branch leaves. */
export function nodeOf({ stretches }: Skeleton, { stretch, isFrom }: Branch): number {
  const { from, to } = stretches[stretch] as Stretch;
  return isFrom ? from : to;
}

/** Which way branches leave their forks, each found once. */
export class Headings {
  private readonly page: PreparedPage;
  private readonly skeleton: Skeleton;
  private readonly ways: (Point | null | undefined)[];

  constructor(page: PreparedPage, skeleton: Skeleton) {
    this.page = page;
    this.skeleton = skeleton;
    this.ways = new Array(2 * skeleton.stretches.length);
  }

  /** Which way a branch leaves its fork. */
  wayOf(branch: Branch): Point | null {
    const number = 2 * branch.stretch + (branch.isFrom ? 0 : 1);
    const known = this.ways[number];
    if (known !== undefined) return known;
    const { lineWidth } = this.page;
    const { x, y } = this.skeleton.nodes[nodeOf(this.skeleton, branch)] as SkeletonNode;
    // So many pixels lead beyond what is looked at, however they wind.
    const points = placesAlong(this.skeleton, branch, 8 * SEEN_TO * lineWidth);
    const heading =
      headingOf(points, [x, y], SEEN_FROM * lineWidth, SEEN_TO * lineWidth) ??
      headingOf(points, [x, y], 0, SEEN_TO * lineWidth);
    const way = heading?.along ?? null;
    this.ways[number] = way;
    return way;
  }

  /** Which way a branch begins at its fork. */
  startOf(branch: Branch): Point | null {
    const { lineWidth } = this.page;
    const { x, y } = this.skeleton.nodes[nodeOf(this.skeleton, branch)] as SkeletonNode;
    const points = placesAlong(this.skeleton, branch, 8 * STARTS * lineWidth);
    return headingOf(points, [x, y], 0, STARTS * lineWidth)?.along ?? null;
  }
}
