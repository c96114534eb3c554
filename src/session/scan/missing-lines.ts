import { type Box, distance, type Point } from "../../base/index.ts";
import type { Id, PinRef, Wire } from "../../job/index.ts";
import type { NetRun } from "../../scan/index.ts";
import { pinAt } from "../diagram/hit-test.ts";
import { lengthOf, nearestOnLine } from "../diagram/polyline.ts";
import type { Scene } from "../diagram/scene.ts";
import { NameGroups } from "./name-groups.ts";
import { chainsOf, countEnds, type Link, type Standing } from "./net-chains.ts";
import { squaredRuns } from "./squared-net.ts";
import { degreesOf, isWordStub, type WholeNet } from "./whole-net.ts";

/** What an end of a wire that a net lacks comes to. */
export type LineEnd =
  | { readonly on: "pin"; readonly ref: PinRef }
  /** A splice to be made, one for each number of node. */
  | { readonly on: "joint"; readonly node: number; readonly at: Point }
  /** A wire that is drawn already passes here: it is to be split by a splice. */
  | { readonly on: "wire"; readonly wire: Id; readonly at: Point }
  /** The line ends on the picture and nothing is placed there: it goes on, not traced. */
  | { readonly on: "open"; readonly at: Point };

export interface MissingLine {
  readonly from: LineEnd;
  readonly to: LineEnd;
  /** Between the ends, pixels of the sheet. */
  readonly corners: readonly Point[];
}

/** Pins as the wires of all sheets join them. */
export function drawnGroups(
  wires: Iterable<{ readonly from: PinRef; readonly to: PinRef }>,
): NameGroups {
  const groups = new NameGroups();
  for (const { from, to } of wires) groups.join(from, to);
  return groups;
}

/** Lines longer than this, in symbol units, that end where others do are wires of their own, not a blot. */
const NO_BLOT = 4;
/** A wire that is drawn by hand runs at most this far beside its line, in symbol units. */
const BESIDE = 0.75;

/**
 * The wires that a net of the picture has and the drawing lacks. Nothing is joined that the net does
 * not join; what wires join already is left as it is. `unit`: pixels to a symbol unit. `taken`: splices
 * that another net has; what this one takes is added.
 */
export function missingLines(
  net: WholeNet,
  scene: Scene,
  groups: NameGroups,
  words: readonly Box[],
  unit: number,
  taken: Set<PinRef>,
): readonly MissingLine[] {
  const { nodes, links } = withDrawn(net, scene, groups, BESIDE * unit, taken);
  const degrees = degreesOf(net);
  const lengths = net.runs.map(({ points }) => lengthOf(points));
  const lengthTo = (node: number) =>
    lengths[net.runs.findIndex(({ from, to }) => from === node || to === node)] as number;
  const standing = (node: number): Standing => {
    const { at, pin, pass } = nodes[node] as DrawnNode;
    const isPlace = pin !== null || pass !== null;
    const isEnd = degrees[node] === 1 && !isWordStub(at, lengthTo(node), words);
    return { isPlace, isEnd };
  };
  const isBlot = ({ from, to, run }: Link) =>
    run === null || from === to || (lengths[run] as number) < NO_BLOT * unit;
  const chains = chainsOf(lacking(links, nodes, groups, isBlot), standing);
  const used = chains.flatMap(({ walk }) => walk.map(({ link }) => link));
  const count = countEnds(used);
  const fixed = new Map<number, Point>();
  nodes.forEach(({ pin, pass }, node) => {
    const at = pin !== null ? scene.pins.get(pin)?.at : pass?.at;
    if (at) fixed.set(node, at);
  });
  const shown = used.filter(({ run }) => run !== null);
  const runs = shown.map(({ run }) => net.runs[run as number] as NetRun);
  const squared = squaredRuns(net.nodes, runs, fixed, BESIDE * unit);
  const pointsOf = new Map(shown.map((link, place) => [link, squared[place] as Point[]]));
  const endAt = (node: number, at: Point | undefined): LineEnd => {
    const { at: seen, pin, pass } = nodes[node] as DrawnNode;
    if (pin !== null) return { on: "pin", ref: pin };
    if (pass) return { on: "wire", wire: pass.wire, at: pass.at };
    if (count.get(node) === 1) return { on: "open", at: at ?? seen };
    return { on: "joint", node, at: at ?? seen };
  };
  return chains.flatMap(({ from, to, walk }): MissingLine[] => {
    const points = walk.flatMap(({ link, isTurned }, place) => {
      const run = pointsOf.get(link) ?? [];
      const way = isTurned ? run.toReversed() : run;
      return place === 0 ? way : way.slice(1);
    });
    const ends = [endAt(from, points[0]), endAt(to, points.at(-1))] as const;
    const [a, b] = ends;
    if (a.on === "pin" && b.on === "pin" && a.ref === b.ref) return [];
    return [{ from: a, to: b, corners: points.slice(1, -1) }];
  });
}

/** A node of a net, with what is drawn there. */
interface DrawnNode {
  readonly at: Point;
  readonly pin: PinRef | null;
  /** A wire of the same net that is drawn already and passes here. */
  readonly pass: { readonly wire: Id; readonly at: Point; readonly group: string } | null;
}

/** The net with what is drawn of it; further pins at one place of the picture are nodes of their own. */
function withDrawn(
  net: WholeNet,
  scene: Scene,
  groups: NameGroups,
  reach: number,
  taken: Set<PinRef>,
) {
  const links: Link[] = net.runs.map(({ from, to }, run) => ({ from, to, run }));
  const pinsAt = net.nodes.map(({ terminals }) => terminals.filter((ref) => scene.pins.has(ref)));
  const own = new Set(pinsAt.flat().map((ref) => groups.of(ref)));
  const wires = scene.wires.flatMap(({ wire, points }): OwnWire[] => {
    const group = groups.of(wire.from);
    return own.has(group) ? [{ wire, points, group }] : [];
  });
  const nodes: DrawnNode[] = net.nodes.map(({ at }, node) => {
    const [pin] = pinsAt[node] as PinRef[];
    if (pin !== undefined) return { at, pin, pass: null };
    const passed = passedBy(wires, at, reach);
    if (passed.pin !== null || passed.pass) return { at, ...passed };
    const splice = idleSplice(scene, at, reach);
    if (splice === null || taken.has(splice)) return { at, pin: null, pass: null };
    taken.add(splice);
    return { at, pin: splice, pass: null };
  });
  pinsAt.forEach((pins, node) => {
    const { at } = nodes[node] as DrawnNode;
    for (const pin of pins.slice(1)) {
      links.push({ from: node, to: nodes.push({ at, pin, pass: null }) - 1, run: null });
    }
  });
  return { nodes, links };
}

interface OwnWire {
  readonly wire: Wire;
  readonly points: readonly Point[];
  readonly group: string;
}

/** What is drawn of the net near a place: a wire that passes, or the pin that it ends at there. */
function passedBy(
  wires: readonly OwnWire[],
  at: Point,
  reach: number,
): Pick<DrawnNode, "pin" | "pass"> {
  let best: { readonly own: OwnWire; readonly at: Point } | null = null;
  let nearest = reach;
  for (const own of wires) {
    const spot = nearestOnLine(own.points, at);
    if (!spot || spot.distance > nearest) continue;
    nearest = spot.distance;
    best = { own, at: spot.at };
  }
  if (!best) return { pin: null, pass: null };
  const { own, at: spot } = best;
  const isEnd = (end: Point | undefined) => end !== undefined && distance(end, spot) <= reach;
  if (isEnd(own.points[0])) return { pin: own.wire.from, pass: null };
  if (isEnd(own.points.at(-1))) return { pin: own.wire.to, pass: null };
  const whole: Point = [Math.round(spot[0]), Math.round(spot[1])];
  return { pin: null, pass: { wire: own.wire.id, at: whole, group: own.group } };
}

/** A splice near a place on which no wire ends yet: it was put there to be used. */
function idleSplice(scene: Scene, at: Point, reach: number): PinRef | null {
  const hit = pinAt(scene, at, reach);
  const isSplice = hit && scene.partById.get(hit.part)?.part.kind === "splice";
  return isSplice && !scene.degree.get(hit.ref) ? hit.ref : null;
}

/** The links that join what is not joined yet; of a net of which nothing is drawn, rings as well. */
function lacking(
  links: readonly Link[],
  nodes: readonly DrawnNode[],
  groups: NameGroups,
  isBlot: (link: Link) => boolean,
): readonly Link[] {
  const one = new NameGroups();
  const held = nodes.flatMap(({ pin, pass }, node) => {
    const group = pin !== null ? groups.of(pin) : pass?.group;
    return group === undefined ? [] : [{ node, group }];
  });
  for (const { node, group } of held) one.join(`node ${node}`, `group ${group}`);
  const isBare =
    new Set(held.map(({ group }) => group)).size ===
    new Set(nodes.flatMap(({ pin, pass }) => (pass ? [pass.wire] : pin === null ? [] : [pin])))
      .size;
  return links.filter((link) => {
    const isNew = one.join(`node ${link.from}`, `node ${link.to}`);
    return isNew || (isBare && !isBlot(link));
  });
}
