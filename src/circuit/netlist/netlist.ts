import type { Id, Job, When } from "../../job/index.ts";
import { circuitOf } from "../machine-circuit.ts";
import {
  type Bench,
  type Between,
  type Branch,
  type Conditions,
  type Settled,
  setUp,
} from "../solve/index.ts";
import { type Card, cardOf, SECTIONS, type Section } from "./cards.ts";
import { headOf } from "./head.ts";
import { Names } from "./names.ts";
import { placesOf } from "./places.ts";
import { remark } from "./remarks.ts";

/** A machine in one state as a deck for SPICE, and how the deck calls the solver's nodes. */
export interface Netlist {
  /** The deck; its last line ends with a newline. */
  readonly text: string;
  /** Name in the deck by solver node, the reference's is `0`; a node that floats has none. */
  readonly nameOf: ReadonlyMap<number, string>;
  /** Where each node of the deck lies on the machine, pins and cavities. */
  readonly places: ReadonlyMap<number, readonly string[]>;
  /** For each piece of circuit that nothing ties to the rest, the places in it: not in the deck. */
  readonly floating: readonly (readonly string[])[];
  readonly bench: Bench;
}

/** Tighter than the usual 0.1 %, and rounds enough for a machine full of diodes. */
const OPTIONS = ".options reltol=1e-6 itl1=500";

/**
 * The machine in this state as a SPICE deck for an operating point. Relays, modules and fuses are
 * pinned as the solver settled them; lamps and diodes keep their laws, and the simulator finds
 * their currents by itself. `extra`: what is held between two probes, a meter for one.
 */
export function netlistOf(
  job: Job,
  machine: Id | null,
  when: When,
  extra: readonly Between[] = [],
  joints: Conditions["joints"] = "ideal",
): Netlist {
  const bench = setUp(job, machine, when, extra, joints);
  const { wiring, settled } = bench;
  const places = placesOf(job, circuitOf(job, machine), wiring, settled);
  const { piece, references } = settled.point.factored;
  const own = mainPiece(bench);
  const reference = references[own] as number;

  const nodes = new Names();
  const nameOf = new Map([[reference, "0"]]);
  for (const [node, [first = ""]] of places) {
    if (piece[node] === own && node !== reference) nameOf.set(node, nodes.of(first));
  }
  const name = (node: number): string => {
    const known = nameOf.get(node) ?? nodes.of(`node_${node}`);
    nameOf.set(node, known);
    return known;
  };

  const elements = new Names();
  const cards: Card[] = [];
  settled.branches.forEach((branch, index) => {
    if (piece[branch.a] !== own || piece[branch.b] !== own) return;
    if (!isThere(branch, index, settled)) return;
    const ends = [name(branch.a), name(branch.b)] as const;
    // what has both ends at one point carries nothing, unless it drives
    if (ends[0] === ends[1] && branch.acts.is !== "source") return;
    const ohms = settled.point.ohms[index] as number;
    cards.push(cardOf(branch, ends, ohms, elements.of(titleOf(branch)), nodes));
  });

  const floating = floatingPlaces(places, piece, own);
  const head = headOf({ job, machine, when, bench, nameOf, places, floating });
  const body = Object.entries(SECTIONS).flatMap(([section, title]) =>
    sectionOf(section as Section, title, cards),
  );
  const text = [...head, ...body, OPTIONS, ".op", ".end", ""].join("\n");
  return { text, nameOf, places, floating, bench };
}

/** The piece that voltages are told in: that of battery minus or chassis, where something drives. */
function mainPiece({ wiring, settled }: Bench): number {
  const { piece } = settled.point.factored;
  const driven = new Set(
    settled.branches.flatMap((branch, index) =>
      branch.acts.is === "source" && Number.isFinite(settled.point.ohms[index])
        ? [piece[branch.a] as number]
        : [],
    ),
  );
  const grounds = wiring.grounds.map((ground) => piece[ground] as number);
  return grounds.find((own) => driven.has(own)) ?? (grounds[0] as number);
}

/** A junction is there even while it does not conduct: whether it does is the simulator's to find. */
const isThere = ({ acts, gate }: Branch, index: number, { point, states }: Settled): boolean =>
  acts.is === "junction"
    ? gate === null || (states.get(gate.by) ?? false) === gate.on
    : Number.isFinite(point.ohms[index]);

/** `K1:87` and `K1:30` of one relay are told apart, two wires by their ids. */
function titleOf({ owner, element }: Branch): string {
  if (owner === null) return "held";
  return element === null ? owner : `${owner} ${element.a} ${element.b}`;
}

function sectionOf(section: Section, title: string, cards: readonly Card[]): readonly string[] {
  const lines = cards.flatMap((card) => (card.section === section ? card.lines : []));
  return lines.length === 0 ? [] : ["*", ...remark(`${title}.`), ...lines];
}

function floatingPlaces(
  places: ReadonlyMap<number, readonly string[]>,
  piece: Int32Array,
  own: number,
): readonly (readonly string[])[] {
  const apart = new Map<number, string[]>();
  for (const [node, here] of places) {
    const at = piece[node] as number;
    if (at === own) continue;
    const known = apart.get(at);
    if (known) known.push(...here);
    else apart.set(at, [...here]);
  }
  return [...apart.values()];
}
