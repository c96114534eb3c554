import type { Part, PinId } from "../../job/index.ts";
import type { Element, Fed, Law } from "../kinds/index.ts";
import type { Acts, Branch, Decider, Draw, Lowered, Unknown } from "./branch.ts";

/** What decides how an element lies: the state of the machine when the reading is taken. */
export interface Conditions {
  readonly systemVoltage: number;
  readonly engine: "off" | "cranking" | "running";
  /** An alternator is charging: the battery takes what it is given and hardly holds it down. */
  readonly charging: boolean;
  /** With resistance in joints, wires and contacts as on a healthy machine, or without. */
  readonly joints: "ideal" | "real";
}

/** Ω of a closed contact or a good fuse. Ideal is not zero, so that its current can be told. */
const IDEAL_JOINT = 1e-6;
/** A healthy contact (common practice, no source). */
const REAL_JOINT = { is: "ohmic", ohms: 0.01, low: 0.0005, high: 0.05 } as const;
export const joint = (conditions: Conditions): Acts =>
  conditions.joints === "ideal"
    ? { is: "ohmic", ohms: IDEAL_JOINT, low: IDEAL_JOINT, high: IDEAL_JOINT }
    : REAL_JOINT;

/** Times its rating that a fuse must carry, as drawn, before nothing beyond it can be told. */
export const FUSE_TIMES = 2;

/** Ω through which a battery on charge takes its amps (from memory). */
const CHARGED_OHMS = 1;

/** No source is stiffer than this, Ω. */
export const STIFFEST_SOURCE = 1e-5;
/** Silicon: 0.7 V (Kuphaldt, fig. 03249); at a meter's microamps less, at full load more. */
const DIODE = { is: "junction", volts: 0.7, low: 0.4, high: 1.1, ohms: 1e-3 } as const;

/** A voltage converter of the larger sort draws no more (common practice, no source). */
const SOURCE_AMPS = 20;

const MODULE_SOURCE_SPREAD = [0.95, 1.05] as const;
/** With the engine running and no alternator drawn: as much as one that is there would give. */
const PERHAPS_CHARGED_SPREAD = [0.94, 14.8 / 12.6] as const;
/** A battery from nearly flat to freshly charged, and one that cranks (common practice). */
const BATTERY_SPREAD = [0.94, 1.05] as const;
const CRANKING_SPREAD = [0.7, 1.05] as const;
const BATTERY_SPREADS = {
  off: BATTERY_SPREAD,
  cranking: CRANKING_SPREAD,
  running: PERHAPS_CHARGED_SPREAD,
} as const;
const CHARGING_SPREAD = [0.96, 1.04] as const;

const fixed = (ohms: number): Acts => ({ is: "ohmic", ohms, low: ohms * 0.95, high: ohms * 1.05 });

/** Turns one declared element into what the solver knows, as it lies under these conditions. */
export function lower(part: Part, element: Element, conditions: Conditions): Lowered {
  const { a, b, law } = element;
  const branch = (acts: Acts, from = a, to = b, gate: Branch["gate"] = null): Branch<PinId> => ({
    a: from,
    b: to,
    owner: part.id,
    element,
    acts,
    gate,
    closedIn: null,
  });
  const suppression = (cathode: "a" | "b" | null): readonly Branch<PinId>[] =>
    cathode === null ? [] : [cathode === "a" ? branch(DIODE, b, a) : branch(DIODE)];
  const only = (...branches: Branch<PinId>[]): Lowered => ({
    branches,
    deciders: [],
    unknowns: [],
  });

  switch (law.is) {
    case "protection":
      return only(branch(joint(conditions)));
    case "contact":
      return only({ ...branch(joint(conditions)), closedIn: law.closedIn });
    case "relay-contact":
      return only(
        branch(joint(conditions), a, b, { by: part.id, on: law.closedWhen === "pulled" }),
      );
    case "coil":
      return {
        branches: [
          branch(winding(law.ohms, law.unsaid ?? [0.85, 1.3])),
          ...(law.parallelOhms === undefined ? [] : [branch(fixed(law.parallelOhms))]),
          ...suppression(law.cathode),
        ],
        deciders: [
          {
            id: part.id,
            part: part.id,
            is: "coil",
            a,
            b,
            pullIn: law.pullIn * conditions.systemVoltage,
            dropOut: law.dropOut * conditions.systemVoltage,
            latching: law.latching ?? false,
          },
        ],
        unknowns: [],
      };
    case "load":
      return only(
        branch(
          law.coldOhms < law.ohms
            ? {
                is: "filament",
                hot: law.ohms,
                cold: law.coldOhms,
                ratedVolts: conditions.systemVoltage,
                spread: law.spread,
              }
            : winding(law.ohms, law.spread),
        ),
        ...suppression(law.cathode),
      );
    case "led":
      return only(
        branch({
          is: "junction",
          volts: law.volts,
          low: law.volts * 0.5,
          high: law.volts * 1.2,
          ohms: law.ohms,
          ...(law.unsaid ? { spread: law.unsaid } : {}),
        }),
      );
    case "resistor":
      return only(branch(law.unsaid ? winding(law.ohms, law.unsaid) : fixed(law.ohms)));
    case "sender":
      return only(
        branch({
          is: "ohmic",
          ohms: (law.ohmsMin + law.ohmsMax) / 2,
          low: law.unsaid?.[0] ?? law.ohmsMin,
          high: law.unsaid?.[1] ?? law.ohmsMax,
        }),
      );
    case "track":
      // its two halves are the wiper's elements
      return only();
    case "wiper":
      return only(
        branch({
          is: "slide",
          track: law.ohms,
          rising: b === "1",
          ...(law.unsaid ? { spread: law.unsaid } : {}),
        }),
      );
    case "diode":
      return only(branch(DIODE));
    case "source":
      return lowerSource(part, element, law, conditions);
    case "module-path":
      return lowerPath(part, element, law, conditions);
  }
}

const winding = (ohms: number, [low, high]: readonly [number, number]): Acts => ({
  is: "ohmic",
  ohms,
  low: ohms * low,
  high: ohms * high,
});

function lowerSource(
  part: Part,
  element: Element,
  law: Extract<Law, { is: "source" }>,
  conditions: Conditions,
): Lowered {
  const base = { a: element.a, b: element.b, owner: part.id, element, closedIn: null };
  const source = ([low, high]: readonly [number, number]): Acts => ({
    is: "source",
    volts: law.volts,
    low: law.volts * low,
    high: law.volts * high,
    ohms: Math.max(
      law.ohms,
      law.live === "always" && conditions.charging ? CHARGED_OHMS : STIFFEST_SOURCE,
    ),
  });
  if (law.live === "unknown") {
    const unknown: Unknown<PinId> = {
      part: part.id,
      nodes: [element.a, element.b],
      what: `whether ${part.id} is powered`,
    };
    return { branches: [], deciders: [], unknowns: [unknown] };
  }
  if (law.live === "always" || law.live === "engine-running") {
    const live = law.live === "always" || conditions.engine === "running";
    const spread =
      law.live === "engine-running" ? CHARGING_SPREAD : BATTERY_SPREADS[conditions.engine];
    const acts = live
      ? source(spread)
      : law.restOhms === undefined
        ? null
        : winding(law.restOhms, [0.3, 3]);
    return {
      branches: acts ? [{ ...base, acts, gate: null }] : [],
      deciders: [],
      unknowns: [],
    };
  }
  const feed = feedDecider(part, law.live);
  const draw: Draw<PinId> = {
    part: part.id,
    nodes: law.live.fedBy,
    what: `what ${part.id} draws`,
    most: SOURCE_AMPS,
  };
  return {
    branches: [{ ...base, acts: source(MODULE_SOURCE_SPREAD), gate: { by: feed.id, on: true } }],
    deciders: [feed],
    unknowns: [],
    draws: law.drawsUnsaid ? [draw] : [],
  };
}

/** One decider per part: all of a module's elements are fed by the same pins. */
const feedDecider = (part: Part, fed: Fed): Decider<PinId> => ({
  id: `${part.id} fed`,
  part: part.id,
  is: "fed",
  pairs: [fed.fedBy, ...(fed.orBy ?? [])],
  minVolts: fed.minVolts,
});

function lowerPath(
  part: Part,
  element: Element,
  law: Extract<Law, { is: "module-path" }>,
  conditions: Conditions,
): Lowered {
  const base = { a: element.a, b: element.b, owner: part.id, element, closedIn: null };
  if (law.does === "always") {
    return {
      branches: [{ ...base, acts: joint(conditions), gate: null }],
      deciders: [],
      unknowns: [],
    };
  }
  if (law.input === null && law.does !== "flash") {
    const unknown: Unknown<PinId> = {
      part: part.id,
      nodes: [element.a, element.b],
      what: `what makes ${part.id} act`,
    };
    return { branches: [], deciders: [], unknowns: [unknown] };
  }
  const feed = law.power ? feedDecider(part, law.power) : null;
  const level: Decider<PinId> = {
    id: `${part.id} ${element.a} ${element.b} ${law.input ?? ""}`,
    part: part.id,
    is: "level",
    input: law.input,
    grounds: law.power
      ? [law.power.fedBy, ...(law.power.orBy ?? [])].map(([, ground]) => ground)
      : [],
    active: law.active,
    does: law.does,
    seconds: law.seconds,
    power: feed?.id ?? null,
  };
  return {
    branches: [{ ...base, acts: joint(conditions), gate: { by: level.id, on: true } }],
    deciders: feed ? [feed, level] : [level],
    unknowns: [],
  };
}
