import { type Id, type Job, ownerOf, type Part, type PinId } from "../../job/index.ts";
import { type Assembly, conditionsOf, type Frame, openedPins } from "./assemble.ts";
import type { Branch, Decider } from "./branch.ts";
import type { MovedEnds } from "./elimination-plan.ts";
import { laidIn } from "./laid-part.ts";

/** An assembly made out of one with everything in its place. */
export interface AssemblyWithout {
  readonly assembly: Assembly;
  /** Nodes that it has more, behind those of the other. */
  readonly more: number;
  /** Branches that lie between other nodes than there. */
  readonly moved: readonly MovedEnds[];
}

/**
 * The assembly with some parts or plugs out, made of the one with everything in its place: pins that
 * are parted get nodes of their own, and what their parts do lies between those. Null where nodes of
 * the whole would come apart: where wires meet in what is out, or a way to the frame goes with it.
 */
export function assemblyWithout(
  whole: Assembly,
  job: Job,
  out: readonly Id[],
): AssemblyWithout | null {
  const { drawn } = whole;
  const frame: Frame = { ...whole.frame, out };
  if (conditionsOf(job, drawn, frame).charging !== whole.conditions.charging) return null;
  const open = openedPins(job, drawn, out);
  const owners = new Set([...open].map(ownerOf));
  for (const id of owners) {
    const part = drawn.parts.get(id);
    if (part && (drawn.joints.has(id) || JOINING.has(part.kind))) return null;
  }
  let nodeCount = whole.nodeCount;
  const own = new Map<string, number>();
  const branches = [...whole.branches];
  const unknowns = [...whole.unknowns];
  const draws = [...whole.draws];
  const deciders = new Map<string, Decider>();
  const moved: MovedEnds[] = [];
  const chassis = [whole.nodeAt("chassis") as number];
  drawn.circuit.parts.forEach((part, index) => {
    if (!owners.has(part.id)) return;
    const nodes = new Map<PinId, number | null>();
    for (const { id, ref } of drawn.pins[index] ?? []) {
      if (open.has(ref)) own.set(`own ${ref}`, nodeCount++);
      nodes.set(id, own.get(`own ${ref}`) ?? whole.nodeAt(ref));
    }
    const at = (pin: PinId): number => {
      const node = nodes.get(pin) ?? null;
      if (node === null) throw new Error(`${part.id} has no pin ${pin}`);
      return node;
    };
    const { conditions } = whole;
    const elements = drawn.elements.get(part.id) ?? [];
    const laid = laidIn(part, elements, { conditions, fatesOf: () => undefined, at, chassis });
    const first = whole.firstOf[index];
    if (!first) throw new Error(`${part.id} is not in the assembly`);
    laid.branches.forEach((branch, n) => {
      const place = first.branch + n;
      const before = branches[place] as Branch;
      branches[place] = branch;
      if (before.a !== branch.a || before.b !== branch.b)
        moved.push({ index: place, a: branch.a, b: branch.b });
    });
    laid.unknowns.forEach((unknown, n) => {
      unknowns[first.unknown + n] = unknown;
    });
    laid.draws.forEach((draw, n) => {
      draws[first.draw + n] = draw;
    });
    for (const decider of laid.deciders)
      if (!deciders.has(decider.id)) deciders.set(decider.id, decider);
  });
  return {
    assembly: {
      ...whole,
      frame,
      nodeAt: (name) => own.get(name) ?? whole.nodeAt(name),
      nodeCount,
      branches,
      unknowns,
      draws,
      deciders: whole.deciders.map((one) => deciders.get(one.id) ?? one),
      open,
    },
    more: nodeCount - whole.nodeCount,
    moved,
  };
}

/** Kinds that make one node of several: the frame, and lines that go on elsewhere. */
const JOINING: ReadonlySet<Part["kind"]> = new Set(["ground", "offpage"]);
