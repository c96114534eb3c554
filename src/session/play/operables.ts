import {
  circuitOf,
  doesWork,
  elementsOf,
  type PartState,
  restPosition,
  springPositions,
} from "../../circuit/index.ts";
import type { Id, Job, Part, PartOf, Position, Step } from "../../job/index.ts";
import { perMachine } from "../per-machine.ts";
import type { OperateState, PlayedStep } from "./operate-state.ts";

/** What can be operated or watched on one machine, in the order of the drawing. */
export interface Operables {
  readonly switches: readonly PartOf<"switch">[];
  readonly fuses: readonly Part[];
  /** What can be unplugged. */
  readonly plugged: readonly Part[];
  /** What does something to be seen or heard when it is on. */
  readonly loads: readonly Part[];
  /** Further parts that can be taken out. */
  readonly others: readonly Part[];
  readonly byId: ReadonlyMap<Id, Part>;
}

/** The parts of one machine by what can be done with them; worked out once per document. */
export const operablesOf = perMachine((job: Job, machine: Id): Operables => {
  const { parts } = circuitOf(job, machine);
  const byUse = new Map<Usage, Part[]>();
  for (const part of parts) {
    const use = usageOf(part, job.systemVoltage);
    const alike = byUse.get(use);
    if (alike) alike.push(part);
    else byUse.set(use, [part]);
  }
  const of = (use: Usage) => byUse.get(use) ?? [];
  return {
    switches: of("switch") as PartOf<"switch">[],
    fuses: of("fuse"),
    plugged: of("plug"),
    loads: of("load"),
    others: of("other"),
    byId: new Map(parts.map((part) => [part.id, part])),
  };
});

type Usage = "switch" | "fuse" | "plug" | "load" | "other" | "none";

function usageOf(part: Part, systemVoltage: number): Usage {
  if (part.kind === "switch") return "switch";
  if (part.kind === "module" || part.kind === "inline") return "plug";
  const laws = elementsOf(part, systemVoltage).map(({ law }) => law);
  if (laws.length === 0) return "none";
  if (laws.some(({ is }) => is === "protection")) return "fuse";
  return laws.some(doesWork) ? "load" : "other";
}

/** One thing that can be done with a part now. */
export interface Act {
  /** A verb a mechanic uses. */
  readonly label: string;
  readonly step: Step;
}

/**
 * Where a switch stands: where a hand has just put it, though the circuit has not answered yet;
 * at rest as long as nobody has said otherwise.
 */
export function positionOf(part: PartOf<"switch">, { live, played }: OperateState): Position {
  for (let index = played.length - 1; index >= 0; index--) {
    const { step, outcome } = played[index] as PlayedStep;
    if (outcome) break;
    if (step.do === "turn" && step.switch === part.id) return step.position;
  }
  return live?.parts[part.id]?.position ?? restPosition(part) ?? "";
}

export const isSpring = (part: PartOf<"switch">, position: Position): boolean =>
  springPositions(part).includes(position);

/**
 * The position that a touch of a switch means: the other one of two. Null where there are more and
 * it has to be said which.
 */
export function otherPosition(part: PartOf<"switch">, operate: OperateState): Position | null {
  if (part.positions.length !== 2) return null;
  const now = positionOf(part, operate);
  return part.positions.find((position) => position !== now) ?? null;
}

/** What can be done with a part besides turning it: taken out, put back, unplugged, plugged in. */
export function actsOf(part: Part, state: PartState | undefined, systemVoltage: number): Act[] {
  const use = usageOf(part, systemVoltage);
  const { id } = part;
  if (use === "plug") {
    return state?.unplugged
      ? [{ label: `Plug in ${id}`, step: { do: "plug", id } }]
      : [{ label: `Unplug ${id}`, step: { do: "unplug", id } }];
  }
  if (use === "none" || use === "switch") return [];
  const out = use === "fuse" ? "Pull" : "Take out";
  if (state?.removed) return [{ label: `Put ${id} back`, step: { do: "fit", id } }];
  return [
    ...(state?.blown ? [{ label: `Replace ${id}`, step: { do: "fit", id } as const }] : []),
    { label: `${out} ${id}`, step: { do: "remove", id } },
  ];
}
