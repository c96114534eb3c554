import { type Box, distance, type Point } from "../../base/index.ts";
import { type Id, type Job, ownerOf, type PinRef, pinRef, type Wire } from "../../job/index.ts";
import { idSource, plain } from "../diagram/draft.ts";
import { settleEnd } from "../diagram/lay-wire.ts";
import { addPart, unitFor } from "../diagram/new-part.ts";
import { lengthOf, nearestOnLine } from "../diagram/polyline.ts";
import { type Scene, sceneOf } from "../diagram/scene.ts";
import { setPath, splitWire } from "../diagram/split-wire.ts";
import { drawnGroups, type LineEnd, type MissingLine, missingLines } from "./missing-lines.ts";
import type { WholeNet } from "./whole-net.ts";

/** What an edit drew of nets of the picture. */
export interface NetsLaid {
  readonly wires: readonly Id[];
  /** Splices and untraced ends that were made for them. */
  readonly parts: readonly Id[];
}

/**
 * Draws what the sheet lacks of these nets of its picture: wires with their real corners, splices at
 * their joints, an untraced end where a line ends and nothing is placed. What is drawn stays; no two
 * pins are joined that are not of one net. No two of the nets may share a pin (see `wholeNets`).
 */
export function layNets(
  draft: Job,
  sheet: Id,
  nets: readonly WholeNet[],
  words: readonly Box[],
): NetsLaid {
  const job = plain(draft);
  const scene = sceneOf(job.diagram, sheet);
  const groups = drawnGroups(job.diagram.wires);
  const unit = unitFor(job, sheet);
  const taken = new Set(nets.flatMap(({ terminals }) => terminals));
  const missing = nets.map((net) => missingLines(net, scene, groups, words, unit, taken));
  const nextId = idSource(draft);
  const laid = { wires: [] as Id[], parts: [] as Id[] };
  const onWires = splitWires(draft, scene, missing.flat(), nextId);
  for (const ref of onWires.values()) laid.parts.push(ownerOf(ref));
  for (const lines of missing) {
    const joints = new Map<number, PinRef>();
    const settle = (end: LineEnd, before: Point): PinRef | null => {
      switch (end.on) {
        case "pin":
          return end.ref;
        case "wire":
          return onWires.get(spotName(end)) ?? null;
        case "open":
          return settleEnd(draft, sheet, end, before, nextId);
        case "joint":
          return pinRef(addPart(draft, "splice", sheet, end.at, 0, nextId), "1");
      }
    };
    const settled = (end: LineEnd, before: Point): PinRef | null => {
      const known = end.on === "joint" ? joints.get(end.node) : undefined;
      const ref = known ?? settle(end, before);
      if (end.on === "joint" && ref) joints.set(end.node, ref);
      if (ref && !known && (end.on === "joint" || end.on === "open")) laid.parts.push(ownerOf(ref));
      return ref;
    };
    for (const { from, to, corners } of lines) {
      const start = settled(from, corners[0] ?? placeOf(scene, to));
      const end = settled(to, corners.at(-1) ?? placeOf(scene, from));
      if (start === null || end === null || start === end) continue;
      const wire: Wire = { id: nextId("W"), from: start, to: end };
      setPath(wire, corners);
      draft.diagram.wires.push(wire);
      laid.wires.push(wire.id);
    }
  }
  return laid;
}

/** Whether the sheet lacks anything of a net of its picture. `job`: as the boards show it. */
export function isLacking(job: Job, sheet: Id, net: WholeNet, words: readonly Box[]): boolean {
  const groups = drawnGroups(job.diagram.wires);
  const scene = sceneOf(job.diagram, sheet);
  const unit = unitFor(job, sheet);
  return missingLines(net, scene, groups, words, unit, new Set(net.terminals)).length > 0;
}

const placeOf = (scene: Scene, end: LineEnd): Point =>
  end.on === "pin" ? (scene.pins.get(end.ref)?.at ?? [0, 0]) : end.at;

type OnWire = LineEnd & { readonly on: "wire" };

const spotName = ({ wire, at: [x, y] }: OnWire): string => `${wire} ${x} ${y}`;

/** Splices nearer to one another than this on one wire are one, pixels. */
const ONE_SPLICE = 2;

/** Splits every wire that new ones begin on, from its far end to its near one. Pins by `spotName`. */
function splitWires(
  draft: Job,
  scene: Scene,
  lines: readonly MissingLine[],
  nextId: (letter: string) => Id,
): ReadonlyMap<string, PinRef> {
  const ends = new Map(
    lines
      .flatMap(({ from, to }) => [from, to])
      .flatMap((end) => (end.on === "wire" ? [[spotName(end), end] as const] : [])),
  );
  const along = ({ wire, at }: OnWire): number => {
    const points = scene.wireById.get(wire)?.points ?? [];
    const spot = nearestOnLine(points, at);
    return spot ? lengthOf([...points.slice(0, spot.segment + 1), spot.at]) : 0;
  };
  const fromFar = [...ends.values()].sort((a, b) =>
    a.wire < b.wire ? -1 : a.wire > b.wire ? 1 : along(b) - along(a),
  );
  const made: { readonly end: OnWire; readonly ref: PinRef }[] = [];
  for (const end of fromFar) {
    const last = made.at(-1);
    const isSame = last?.end.wire === end.wire && distance(last.end.at, end.at) <= ONE_SPLICE;
    const ref = isSame ? last.ref : splitWire(draft, end.wire, end.at, nextId);
    if (ref !== null) made.push({ end, ref });
  }
  return new Map(made.map(({ end, ref }) => [spotName(end), ref]));
}
