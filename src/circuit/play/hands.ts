import type { Id, Job, PartOf, Position, Step, When } from "../../job/index.ts";
import { restPosition, springPositions } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";

/** What people have done to the machine: all of it stays until somebody does something else. */
export interface Hands {
  /** Switches that are not at rest. */
  readonly switches: Readonly<Record<Id, Position>>;
  readonly unplugged: readonly Id[];
  readonly removed: readonly Id[];
  readonly engine: NonNullable<When["engine"]>;
}

export const AT_REST: Hands = { switches: {}, unplugged: [], removed: [], engine: "off" };

/** The state as a reading names it: only what differs from rest. */
export function whenOf({ switches, unplugged, removed, engine }: Hands): When {
  return {
    ...(Object.keys(switches).length > 0 ? { switches } : {}),
    ...(unplugged.length > 0 ? { unplugged: [...unplugged] } : {}),
    ...(removed.length > 0 ? { removed: [...removed] } : {}),
    ...(engine === "off" ? {} : { engine }),
  };
}

export type Handled =
  | { readonly ok: true; readonly hands: Hands }
  /** One sentence. */
  | { readonly ok: false; readonly why: string };

/** What is done to a part, in the words of the list of steps. */
const TO_DO = {
  unplug: "unplug",
  plug: "plug in",
  remove: "take out",
  fit: "put back",
} as const;

/** Does to the machine what a step of a person does; `wait` does nothing to it. */
export function handle(job: Job, circuit: Circuit, hands: Hands, step: Step): Handled {
  const part = (id: Id) => circuit.parts.find((one) => one.id === id);
  const done = (change: Partial<Hands>): Handled => ({ ok: true, hands: { ...hands, ...change } });
  const refused = (why: string): Handled => ({ ok: false, why });
  const known = (id: Id) => part(id) !== undefined || job.plugs.some((plug) => plug.id === id);

  switch (step.do) {
    case "turn":
    case "release": {
      const found = part(step.switch);
      if (found?.kind !== "switch")
        return refused(`${step.switch} is not a switch of this machine.`);
      const now = hands.switches[found.id] ?? restPosition(found);
      if (step.do === "release") {
        return now === undefined
          ? done({})
          : done({ switches: moved(hands, found, fallen(found, now)) });
      }
      return found.positions.includes(step.position)
        ? done({ switches: moved(hands, found, step.position) })
        : refused(
            `${found.id} has no position "${step.position}"; it has ${found.positions.join(", ")}.`,
          );
    }
    case "unplug":
    case "plug":
      return known(step.id)
        ? done({ unplugged: listed(hands.unplugged, step.id, step.do === "unplug") })
        : refused(`There is no ${step.id} on this machine to ${TO_DO[step.do]}.`);
    case "remove":
    case "fit":
      return known(step.id)
        ? done({ removed: listed(hands.removed, step.id, step.do === "remove") })
        : refused(`There is no ${step.id} on this machine to ${TO_DO[step.do]}.`);
    case "engine":
      return done({ engine: step.engine });
    case "wait":
      return done({});
  }
}

type Switch = PartOf<"switch">;

function moved({ switches }: Hands, part: Switch, to: Position): Hands["switches"] {
  const { [part.id]: _, ...others } = switches;
  return to === restPosition(part) ? others : { ...others, [part.id]: to };
}

/**
 * Where a switch goes when it is let go: from a spring position towards rest, as far as the first
 * position in which it stays. A key falls from start to run, not to off.
 */
function fallen(part: Switch, from: Position): Position {
  const springs = springPositions(part);
  const rest = restPosition(part) ?? from;
  const home = part.positions.indexOf(rest);
  let at = part.positions.indexOf(from);
  while (at !== home && springs.includes(part.positions[at] ?? rest)) at += at < home ? 1 : -1;
  return part.positions[at] ?? rest;
}

const listed = (ids: readonly Id[], id: Id, is: boolean): readonly Id[] =>
  is === ids.includes(id) ? ids : is ? [...ids, id] : ids.filter((one) => one !== id);
