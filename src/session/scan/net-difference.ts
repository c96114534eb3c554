import { addTo, type Box, boundsOf } from "../../base/index.ts";
import { type Job, ownerOf, type PinRef } from "../../job/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import type { PinSpot } from "../diagram/part-shape.ts";
import { type Scene, sceneOf } from "../diagram/scene.ts";
import { drawnGroups } from "./missing-lines.ts";
import { NameGroups } from "./name-groups.ts";
import { degreesOf, type WholeNet } from "./whole-net.ts";

/** Why a net is not to be drawn without a look at it. */
export type NetDoubt =
  /** It comes to places where the picture can't tell. */
  | { readonly why: "asked"; readonly questions: readonly LineQuestion[] }
  /** It joins both ends of this part: more likely the part's box leaves some of its symbol out. */
  | { readonly why: "shorted"; readonly part: string }
  /** It would make one net of several that are drawn. */
  | { readonly why: "joins-drawn" }
  /** It comes to one pin only, and goes on where nothing is placed. */
  | { readonly why: "one-pin" }
  /** It has more ends, where nothing is placed: a part that is missing, or a mark that is no line. */
  | { readonly why: "goes-on" };

/** A net of the picture of which wires are missing. */
export interface NetProposal {
  readonly net: WholeNet;
  /** `new`: none of its pins are joined; `partly`: some are. */
  readonly kind: "new" | "partly";
  /** Its pins as wires join them already. */
  readonly groups: readonly (readonly PinRef[])[];
  /** Empty for a sure one. */
  readonly doubts: readonly NetDoubt[];
}

/** Wires that the picture does not have. */
export interface DrawnOtherwise {
  /** Stable while it says the same. */
  readonly id: string;
  /** Pins that wires join, as the picture keeps them apart. */
  readonly groups: readonly (readonly PinRef[])[];
  /** Whether the picture would have them joined if its open questions were answered so. */
  readonly isAsked: boolean;
  readonly box: Box;
}

export interface NetDifference {
  readonly proposals: readonly NetProposal[];
  readonly otherwise: readonly DrawnOtherwise[];
  /** How many nets are drawn as the picture has them. */
  readonly same: number;
}

/** What the lines of a sheet's picture and the wires drawn over it have different. `job`: as the boards show it. */
export function netDifference(
  job: Job,
  sheet: string,
  nets: readonly WholeNet[],
  questions: readonly LineQuestion[],
): NetDifference {
  const scene = sceneOf(job.diagram, sheet);
  const groups = drawnGroups(job.diagram.wires);
  const asking = new Map<string, LineQuestion[]>();
  for (const question of questions) for (const net of question.nets) addTo(asking, net, question);
  const proposals: NetProposal[] = [];
  let same = 0;
  for (const net of nets) {
    const pins = net.terminals.filter((ref) => scene.pins.has(ref));
    const drawn = inGroups(pins, (ref) => groups.of(ref));
    const freeEnds = freeEndsOf(net);
    if (pins.length > 1 && drawn.length === 1) same++;
    if (drawn.length < 2 && !(pins.length === 1 && freeEnds > 0 && !isWired(scene, pins))) continue;
    const asked = [...new Set(net.of.flatMap((id) => asking.get(id) ?? []))];
    proposals.push({
      net,
      kind: drawn.every((group) => group.length === 1) ? "new" : "partly",
      groups: drawn,
      doubts: doubtsOf(scene, pins, drawn, asked, freeEnds),
    });
  }
  return { proposals, otherwise: drawnOtherwise(scene, nets, questions), same };
}

function doubtsOf(
  scene: Scene,
  pins: readonly PinRef[],
  drawn: readonly (readonly PinRef[])[],
  asked: readonly LineQuestion[],
  freeEnds: number,
): readonly NetDoubt[] {
  const doubts: NetDoubt[] = [];
  if (asked.length > 0) doubts.push({ why: "asked", questions: asked });
  const byPart = new Map<string, number>();
  for (const ref of pins) byPart.set(ownerOf(ref), (byPart.get(ownerOf(ref)) ?? 0) + 1);
  for (const [part, count] of byPart) {
    if (count === 2 && scene.partById.get(part)?.pins.length === 2)
      doubts.push({ why: "shorted", part });
  }
  if (drawn.filter((group) => group.length > 1).length > 1) doubts.push({ why: "joins-drawn" });
  if (pins.length === 1) doubts.push({ why: "one-pin" });
  else if (freeEnds > 0) doubts.push({ why: "goes-on" });
  return doubts;
}

const isWired = (scene: Scene, pins: readonly PinRef[]) =>
  pins.some((ref) => (scene.degree.get(ref) ?? 0) > 0);

/** Lines of a net that end where no pin is. */
export function freeEndsOf(net: WholeNet): number {
  const degrees = degreesOf(net);
  return net.nodes.filter((node, n) => degrees[n] === 1 && node.terminals.length === 0).length;
}

function inGroups(
  pins: readonly PinRef[],
  groupOf: (ref: PinRef) => string,
): readonly (readonly PinRef[])[] {
  const lists = new Map<string, PinRef[]>();
  for (const ref of pins) addTo(lists, groupOf(ref), ref);
  return [...lists.values()];
}

/** Pins of splices and page ends tell nothing by themselves: they stand where the user or an edit put them. */
const isOnTheWay = (scene: Scene, ref: PinRef): boolean => {
  const kind = scene.partById.get(ownerOf(ref))?.part.kind;
  return kind === "splice" || kind === "offpage";
};

function drawnOtherwise(
  scene: Scene,
  nets: readonly WholeNet[],
  questions: readonly LineQuestion[],
): readonly DrawnOtherwise[] {
  // A way over another sheet is none of this picture's business.
  const drawn = drawnGroups(scene.wires.map(({ wire }) => wire));
  const seen = new NameGroups();
  const asked = new NameGroups();
  for (const { of, terminals } of nets) {
    const [first] = terminals;
    if (first === undefined) continue;
    for (const ref of terminals) seen.join(first, ref);
    for (const name of [...terminals, ...of.map((id) => `net ${id}`)]) asked.join(first, name);
  }
  for (const {
    nets: [first, ...others],
  } of questions)
    for (const other of others) asked.join(`net ${first}`, `net ${other}`);
  const pins = scene.wires
    .flatMap(({ wire }) => [wire.from, wire.to])
    .filter((ref) => scene.pins.has(ref) && !isOnTheWay(scene, ref));
  return inGroups([...new Set(pins)], (ref) => drawn.of(ref)).flatMap((lot) => {
    const apart = inGroups(lot, (ref) => seen.of(ref));
    if (apart.length < 2) return [];
    const box = boundsOf(lot.map((ref) => (scene.pins.get(ref) as PinSpot).at));
    const isAsked = inGroups(lot, (ref) => asked.of(ref)).length < 2;
    return box
      ? [{ id: apart.map((ones) => ones.join(" ")).join(" | "), groups: apart, isAsked, box }]
      : [];
  });
}
