import { Groups, type Point } from "../../base/index.ts";
import type { Branch } from "./branch.ts";
import type { OpenEnd } from "./open-ends.ts";
import type { Skeleton } from "./skeleton.ts";

/** Two ends of stretches that are one line there. */
export interface Pass {
  readonly ends: readonly [Branch, Branch];
  readonly at: Point;
  /** Pixels round the place in which thinned lines lie askew. */
  readonly radius: number;
  /** Whether another line is crossed there, or jumped. */
  readonly isCrossing: boolean;
}

/** Where lines are joined: all these ends are one. */
export interface Junction {
  readonly at: Point;
  readonly radius: number;
  readonly ends: readonly Branch[];
  /** Bumps of a dot's ink, by stretch; one may be what is left of a line. */
  readonly bumps: readonly number[];
}

/** An end that is joined to the middle of a line over a hole. */
export interface Tap {
  readonly end: Branch;
  readonly stretch: number;
  readonly at: Point;
}

/** What lines of a skeleton are joined, and how. */
export class Links {
  readonly passes: Pass[] = [];
  readonly junctions: Junction[] = [];
  readonly taps: Tap[] = [];
  /** Stretches that are no lines, only bumps of the ink where lines meet. */
  readonly bumps = new Set<number>();
  private readonly together: Groups;
  private readonly skeleton: Skeleton;

  constructor(skeleton: Skeleton) {
    this.skeleton = skeleton;
    this.together = new Groups(skeleton.stretches.length);
  }

  netOf(stretch: number): number {
    return this.together.of(stretch);
  }

  isOne = (a: number, b: number) => this.netOf(a) === this.netOf(b);

  pass(a: Branch, b: Branch, at: Point, radius: number, isCrossing: boolean): void {
    this.passes.push({ ends: [a, b], at, radius, isCrossing });
    this.join([a.stretch, b.stretch]);
  }

  junction(junction: Junction): void {
    this.junctions.push(junction);
    this.join([...junction.ends.map(({ stretch }) => stretch), ...junction.bumps]);
  }

  tap(end: Branch, stretch: number, at: Point): void {
    this.taps.push({ end, stretch, at });
    this.join([end.stretch, stretch]);
  }

  /** The end of a stretch that an open end is. */
  branchOf({ node, stretch }: OpenEnd): Branch {
    return { stretch, isFrom: this.skeleton.stretches[stretch]?.from === node };
  }

  private join([first, ...others]: readonly number[]): void {
    if (first === undefined) return;
    for (const other of others) this.together.join(other, first);
  }
}
