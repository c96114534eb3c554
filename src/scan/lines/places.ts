import { distance, type Point } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import type { Answerable } from "./answered.ts";
import { hasDot } from "./blob.ts";
import { heldAgainstPage } from "./dot-yardstick.ts";
import { type Facing, linesFaced } from "./facing.ts";
import { type BrokenCrossing, brokenCrossing } from "./fork.ts";
import { type Gap, gapsBetween } from "./gaps.ts";
import { type Joint, jointAt } from "./joint.ts";
import type { LineMask } from "./line-mask.ts";
import { NearEnds } from "./near-ends.ts";
import type { OpenEnd } from "./open-ends.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton } from "./skeleton.ts";
import { solidInk } from "./solid-ink.ts";
import { waysOf } from "./ways.ts";
import { type Zone, zonesOf } from "./zones.ts";

/** Where lines may be one or not, and what the picture says of it. */
export type LinePlace = Answerable &
  (
    | { readonly kind: "zone"; readonly zone: Zone; readonly joint: Joint }
    | { readonly kind: "broken"; readonly zone: Zone; readonly broken: BrokenCrossing }
    | { readonly kind: "gap"; readonly gap: Gap }
    | { readonly kind: "facing"; readonly facing: Facing }
  );

/** In line widths: how far from a place that the program names an answer may be to be meant for it. */
const REACH = 3;
/** In line widths: no line is looked for beyond a hole wider than this. */
const WIDEST_HOLE = 12;
/** Lines a slice that meet somewhere. */
const LINES = 300;

/** Every place of a page where lines may be joined, in the order in which they are to be decided. */
export function* linePlaces(
  page: PreparedPage,
  skeleton: Skeleton,
  { lines: mask }: LineMask,
  ends: readonly OpenEnd[],
  atParts: ReadonlySet<number>,
): Sliced<LinePlace[]> {
  const { lineWidth } = page;
  const reach = REACH * lineWidth;
  const places: LinePlace[] = [];
  const used = new Set<OpenEnd>();
  const near = new NearEnds(ends, WIDEST_HOLE * lineWidth);
  const holes = yield* asPart(holesBetween(page, ends), 0, 0.1);
  const bridged = holes.flatMap(({ ends: pair, isSure }) => (isSure ? pair : []));
  const lineEnds = new Set([...atParts, ...bridged.map(({ node }) => node)]);
  const ways = waysOf(skeleton, holes);
  yield 0.15;
  const zones = yield* asPart(zonesOf(page, skeleton, lineEnds), 0.15, 0.25);
  const zoneAt = new Map(zones.flatMap((zone) => forksOf(zone)));
  const ink = yield* asPart(solidInk(page, skeleton, zones), 0.25, 0.3);
  let lines = 0;
  for (let n = 0; n < zones.length; n++) {
    const zone = zones[n] as Zone;
    lines += zone.branches.length;
    if (lines >= LINES) {
      lines = 0;
      yield 0.3 + (0.5 * n) / zones.length;
    }
    const { at } = zone;
    if (zone.branches.length + zone.inside.length < 2) continue;
    const around = () => near.around(at, WIDEST_HOLE * lineWidth + zone.radius);
    const broken =
      zone.branches.length !== 3 || hasDot(zone)
        ? null
        : brokenCrossing(page, zone, around(), ways);
    if (broken) {
      for (const other of around()) {
        if (other === broken.end || zone.inside.includes(other.stretch)) used.add(other);
      }
      const far = reach + zone.radius;
      places.push({ kind: "broken", at, reach: far, isDoubtful: !broken.isSure, zone, broken });
    } else {
      const joint = jointAt(page, ink, skeleton, zone, zoneAt, ways);
      const isDoubtful = joint.kind === "doubtful";
      // Two ends are one line, whatever is said there.
      const far = zone.branches.length > 2 ? reach + zone.radius : 0;
      places.push({ kind: "zone", at, reach: far, isDoubtful, zone, joint });
    }
  }
  const held = heldAgainstPage(places.flatMap((one) => (one.kind === "zone" ? one.joint : [])));
  places.forEach((place, n) => {
    if (place.kind !== "zone" || !place.isDoubtful) return;
    const joint = held(place.joint);
    places[n] = { ...place, joint, isDoubtful: joint.kind === "doubtful" };
  });
  const free = ends.filter((end) => !used.has(end));
  const faced = yield* asPart(linesFaced(page, skeleton, mask, free, ways), 0.8, 0.9);
  for (const gap of yield* asPart(holesBetween(page, free), 0.9, 1)) {
    const [a, b] = gap.ends;
    used.add(a).add(b);
    const at = between(a.at, b.at);
    const far = Math.max(reach, gap.wide / 2);
    places.push({ kind: "gap", at, reach: far, isDoubtful: !gap.isSure, gap });
  }
  for (const facing of faced) {
    if (used.has(facing.end)) continue;
    const { at, isSure } = facing;
    places.push({ kind: "facing", at, reach, isDoubtful: !isSure, facing });
  }
  return places;
}

/** Where more than two lines meet, by its nodes. */
const forksOf = (zone: Zone) =>
  zone.branches.length < 3 ? [] : zone.nodes.map((node) => [node, zone] as const);

/** Ends with so many others near are looked at in a slice. */
const ENDS = 150;

/**
 * The gaps between ends, of each crowd of ends alone: what lies farther apart than the widest hole is
 * never one line, and on a large page most ends do.
 */
function* holesBetween(page: PreparedPage, ends: readonly OpenEnd[]): Sliced<Gap[]> {
  const reach = WIDEST_HOLE * page.lineWidth;
  const near = new NearEnds(ends, reach);
  const left = new Set(ends);
  const gaps: Gap[] = [];
  let looked = 0;
  for (const first of ends) {
    if (!left.delete(first)) continue;
    const crowd = [first];
    for (let n = 0; n < crowd.length; n++) {
      if (n % ENDS === ENDS - 1) yield 1 - left.size / ends.length;
      const { at } = crowd[n] as OpenEnd;
      for (const other of near.around(at, reach)) {
        if (!left.has(other) || distance(other.at, at) > reach) continue;
        left.delete(other);
        crowd.push(other);
      }
    }
    const done = 1 - left.size / ends.length;
    const found = crowd.length > 1 ? yield* asPart(gapsBetween(page, crowd), done, done) : [];
    for (const gap of found) gaps.push(gap);
    looked += crowd.length;
    if (looked < ENDS) continue;
    looked = 0;
    yield 1 - left.size / ends.length;
  }
  return gaps;
}

const between = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
